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
        if (!terms.Rules.IsEmpty) WriteList(to, ref separator, "rules", terms.Rules, WriteRule);
        if (terms.Study is not null) WriteText(to, ref separator, "study", terms.Study);
        if (!terms.Subjects.IsEmpty)
        {
            to.Member(ref separator, "subjects");
            to.Texts(terms.Subjects.AsSpan());
        }
        if (terms.Supersedes is not null) WriteText(to, ref separator, "supersedes", terms.Supersedes);
        if (!terms.Topics.IsEmpty) WriteList(to, ref separator, "topics", terms.Topics, (b, t) => b.Texts(t.Topic, t.Value));
        if (separator == '{') to.Raw(separator);
        to.Raw((byte)'}');
        return to.ToArray();
    }

    /// <exception cref="InvalidDataException">They are not in the form in which terms are written.</exception>
    public static IndexTerms Read(ReadOnlyMemory<byte> json)
    {
        try
        {
            return ReadWhole(json);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or IndexOutOfRangeException)
        {
            throw new InvalidDataException("index terms are not in the form in which they are written", e);
        }
    }

    private static IndexTerms ReadWhole(ReadOnlyMemory<byte> json)
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

    private static void WriteRule(CanonicalBuffer to, RuleTerm rule)
    {
        to.Raw((byte)'[');
        to.Text(rule.Rule);
        to.Raw((byte)',');
        to.Text(rule.Revision);
        to.Ascii(",\"");
        foreach (var (letter, outcome) in Letters)
            if ((rule.Outcomes & outcome) != 0)
                to.Raw(letter);
        to.Raw((byte)'"');
        foreach (var finding in rule.Missing)
        {
            to.Raw((byte)',');
            to.Text(finding);
        }
        to.Raw((byte)']');
    }

    private static RuleOutcomes ReadOutcomes(string letters) =>
        Letters.Where(l => letters.Contains((char)l.Letter)).Aggregate(RuleOutcomes.None, (all, l) => all | l.Outcome);

    private static ImmutableArray<(byte Letter, RuleOutcomes Outcome)> Letters { get; } =
        [((byte)'f', RuleOutcomes.Fired), ((byte)'s', RuleOutcomes.Shown), ((byte)'u', RuleOutcomes.Unknown),
            ((byte)'b', RuleOutcomes.Borderline)];

    private static void WriteText(CanonicalBuffer to, ref byte separator, string name, string value)
    {
        to.Member(ref separator, name);
        to.Text(value);
    }

    private static void WriteList<T>(
        CanonicalBuffer to, ref byte separator, string name, ImmutableArray<T> items, Action<CanonicalBuffer, T> write)
    {
        to.Member(ref separator, name);
        var inner = (byte)'[';
        foreach (var item in items)
        {
            to.Raw(inner);
            write(to, item);
            inner = (byte)',';
        }
        to.Raw((byte)']');
    }

    private static ImmutableArray<T> List<T>(JsonElement root, string name, Func<JsonElement, T> read) =>
        root.TryGetProperty(name, out var list) ? [.. list.EnumerateArray().Select(read)] : [];

    private static string Text(JsonElement text) => text.GetString()!;
}
