using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Searching;

/// <summary>The words that all records of an answer have. There is always one.</summary>
internal static class QueryWords
{
    public static IReadOnlyList<long> Of(LedgerQuery query)
    {
        var words = Stated(query).Distinct().ToArray();
        return words.Length > 0 ? words : [Word.Kind(query.Kind)];
    }

    private static IEnumerable<long> Stated(LedgerQuery q)
    {
        var kind = q.Kind;
        var outcome = q.Outcome ?? (q is { Missing: null, IsAccepted: null } ? RuleOutcomes.Fired : null as RuleOutcomes?);
        if (q.Rule is { } rule && outcome is { } became) yield return Word.Rule(kind, became, rule);
        if (q is { Rule: { } of, Revision: { } revision }) yield return Word.Revision(kind, of, revision);
        if (q.Missing is { } missing) yield return q.Rule is { } by ? Word.Missing(kind, missing, by) : Word.Missing(kind, missing);
        if (q.Pack is { } pack) yield return q.PackVersion is { } version ? Word.PackVersion(kind, pack, version) : Word.Pack(kind, pack);
        if (q.PackDigest is { } digest) yield return Word.Digest(kind, digest);
        if (q.Topic is { } topic) yield return q.Value is { } value ? Word.Topic(kind, topic, value) : Word.Topic(kind, topic);
        if (q.Subject is { } subject) yield return Word.Subject(kind, subject);
        if (q.Study is { } study) yield return Word.Study(kind, study);
        if (q.Supersedes is { } replaced) yield return Word.Supersedes(kind, replaced);
        if (q.IsAccepted is { } accepted) yield return q.Rule is { } judged ? Word.Verdict(accepted, judged) : Word.Verdict(accepted);
        if (q.Reason is { } reason) yield return Word.Reason(reason);
        if (q.About is { } about) yield return Word.About(kind, about);
    }
}
