using System.Collections.Immutable;
using System.Text.Json;
using FindingRules.Ledger.Canonical;

namespace FindingRules.Ledger.Records;

/// <summary>Index terms as canonical JSON: short, because every record carries them.</summary>
internal static class TermsJson
{
    public static byte[] Write(IndexTerms terms)
    {
        var to = new CanonicalBuffer(512);
        var separator = (byte)'{';
        if (!terms.Rules.IsEmpty) WriteLists(to, ref separator, "rules", terms.Rules.Select(Parts));
        if (terms.Study is not null) WriteText(to, ref separator, "study", terms.Study);
        if (!terms.Subjects.IsEmpty)
        {
            to.Member(ref separator, "subjects");
            to.Texts(terms.Subjects);
        }
        if (terms.Supersedes is not null) WriteText(to, ref separator, "supersedes", terms.Supersedes);
        if (!terms.Topics.IsEmpty) WriteLists(
            to, ref separator, "topics", terms.Topics.Select(t => (IEnumerable<string>)[t.Topic, t.Value]));
        if (separator == '{') to.Raw(separator);
        to.Raw((byte)'}');
        return to.ToArray();
    }

    public static IndexTerms Read(ReadOnlyMemory<byte> json)
    {
        using var document = JsonDocument.Parse(json);
        var root = document.RootElement;
        return new IndexTerms
        {
            Rules = List(root, "rules", r => new RuleTerm(
                Text(r[0]), Text(r[1]), ReadOutcomes(Text(r[2])), [.. r.EnumerateArray().Skip(3).Select(Text)])),
            Topics = List(root, "topics", t => new TopicTerm(Text(t[0]), Text(t[1]))),
            Subjects = List(root, "subjects", Text),
            Study = root.TryGetProperty("study", out var study) ? Text(study) : null,
            Supersedes = root.TryGetProperty("supersedes", out var supersedes) ? Text(supersedes) : null,
        };
    }

    private static IEnumerable<string> Parts(RuleTerm rule) => [rule.Rule, rule.Revision, WriteOutcomes(rule.Outcomes), .. rule.Missing];

    private static string WriteOutcomes(RuleOutcomes outcomes) =>
        string.Concat(Letters.Where(l => outcomes.HasFlag(l.Outcome)).Select(l => l.Letter));

    private static RuleOutcomes ReadOutcomes(string letters) =>
        Letters.Where(l => letters.Contains(l.Letter)).Aggregate(RuleOutcomes.None, (all, l) => all | l.Outcome);

    private static ImmutableArray<(char Letter, RuleOutcomes Outcome)> Letters { get; } =
        [('f', RuleOutcomes.Fired), ('s', RuleOutcomes.Shown), ('u', RuleOutcomes.Unknown), ('b', RuleOutcomes.Borderline)];

    private static void WriteText(CanonicalBuffer to, ref byte separator, string name, string value)
    {
        to.Member(ref separator, name);
        to.Text(value);
    }

    private static void WriteLists(CanonicalBuffer to, ref byte separator, string name, IEnumerable<IEnumerable<string>> lists)
    {
        to.Member(ref separator, name);
        var inner = (byte)'[';
        foreach (var list in lists)
        {
            to.Raw(inner);
            to.Texts(list);
            inner = (byte)',';
        }
        to.Raw((byte)']');
    }

    private static ImmutableArray<T> List<T>(JsonElement root, string name, Func<JsonElement, T> read) =>
        root.TryGetProperty(name, out var list) ? [.. list.EnumerateArray().Select(read)] : [];

    private static string Text(JsonElement text) => text.GetString()!;
}
