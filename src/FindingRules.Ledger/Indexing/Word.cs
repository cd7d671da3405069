using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Indexing;

/// <summary>
/// What records are found by, as 64 bits of a hash: no dictionary has to be kept, and none tells what an erased
/// record held. Words belong to a
/// kind of record, so that a question about readings never meets a shadow.
/// </summary>
internal static class Word
{
    private const ulong Basis = 14695981039346656037;
    private const ulong Prime = 1099511628211;
    private const ulong Mixer = 0xD6E8FEB86659FD93;
    private const ulong Separator = 0x10000;

    public static long Kind(RecordKind kind) => Of(kind, "kind");

    public static long Pack(RecordKind kind, string name) => Of(kind, "pack", name);

    public static long PackVersion(RecordKind kind, string name, string version) => Of(kind, "version", name, version);

    /// <param name="digest">Of the text or of the meaning.</param>
    public static long Digest(RecordKind kind, string digest) => Of(kind, "digest", digest);

    public static long Rule(RecordKind kind, RuleOutcomes outcome, string rule) => Of(kind, "rule", $"{(int)outcome}", rule);

    public static long Revision(RecordKind kind, string rule, string revision) => Of(kind, "revision", rule, revision);

    public static long Missing(RecordKind kind, string finding) => Of(kind, "missing", finding);

    public static long Missing(RecordKind kind, string finding, string rule) => Of(kind, "missing of", finding, rule);

    public static long Topic(RecordKind kind, string topic) => Of(kind, "topic", topic);

    public static long Topic(RecordKind kind, string topic, string value) => Of(kind, "value", topic, value);

    public static long Subject(RecordKind kind, string subject) => Of(kind, "subject", subject);

    public static long Study(RecordKind kind, string key) => Of(kind, "study", key);

    public static long Supersedes(RecordKind kind, string key) => Of(kind, "supersedes", key);

    public static long About(RecordKind kind, Guid record) => Of(kind, "about", record.ToString());

    public static long Verdict(bool isAccepted) => Of(RecordKind.Reading, "verdict", isAccepted ? "accepted" : "overridden");

    public static long Verdict(bool isAccepted, string rule) =>
        Of(RecordKind.Reading, "verdict of", isAccepted ? "accepted" : "overridden", rule);

    public static long Reason(string reason) => Of(RecordKind.Reading, "reason", reason);

    // FNV-1a over UTF-16, with a last mixing so that all bits depend on all characters. The numbers lie in stores: it must never change.
    private static long Of(RecordKind kind, string name, string first = "", string second = "", string third = "")
    {
        var hash = (Basis ^ (uint)kind) * Prime;
        foreach (var part in (ReadOnlySpan<string>)[name, first, second, third])
        {
            foreach (var c in part) hash = (hash ^ c) * Prime;
            hash = (hash ^ Separator) * Prime;
        }
        hash = (hash ^ (hash >> 32)) * Mixer;
        return (long)(hash ^ (hash >> 29));
    }
}
