using System.Globalization;
using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Indexing;

/// <summary>From a record to the words that find it and the counts that it raises.</summary>
internal static class TermIndexing
{
    private static readonly RuleOutcomes[] EachOutcome = [
        RuleOutcomes.Fired, RuleOutcomes.Shown, RuleOutcomes.Unknown, RuleOutcomes.Borderline];

    public static void Add(IndexedRecord record, IndexRows to)
    {
        var header = record.Header;
        to.Reach(HourOf(header.Time), record.Position);
        foreach (var word in LastingWords(header)) to.Add(word, record.Position);
        if (record.Terms is null) return;
        var terms = TermsJson.Read(record.Terms);
        foreach (var word in ErasableWords(header, terms)) to.Add(word, record.Position);
        if (header is { Kind: RecordKind.Reading, Pack: { } pack })
            foreach (var rule in terms.Rules)
                Count(rule, pack, MonthOf(header.Time), to);
    }

    public static long HourOf(DateTimeOffset time) => time.ToUnixTimeSeconds() / 3600;

    public static string MonthOf(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture);

    /// <summary>Words that say nothing of the study; they stay when the body goes.</summary>
    public static IEnumerable<long> LastingWords(RecordHeader header)
    {
        var kind = header.Kind;
        yield return Word.Kind(kind);
        if (header.Pack is { } pack)
        {
            yield return Word.Pack(kind, pack.Name);
            yield return Word.PackVersion(kind, pack.Name, pack.Version);
            yield return Word.Digest(kind, pack.TextDigest);
            if (pack.MeaningDigest != pack.TextDigest) yield return Word.Digest(kind, pack.MeaningDigest);
        }
        if (header.About is { } about) yield return Word.About(kind, about);
    }

    /// <summary>Words that would tell of an erased study what it held.</summary>
    public static IEnumerable<long> ErasableWords(RecordHeader header, IndexTerms terms)
    {
        var kind = header.Kind;
        if (terms.Study is { } study) yield return Word.Study(kind, study);
        if (terms.Supersedes is { } supersedes) yield return Word.Supersedes(kind, supersedes);
        foreach (var subject in terms.Subjects) yield return Word.Subject(kind, subject);
        foreach (var topic in terms.Topics)
        {
            yield return Word.Topic(kind, topic.Topic);
            yield return Word.Topic(kind, topic.Topic, topic.Value);
        }
        foreach (var rule in terms.Rules)
            foreach (var word in WordsOf(rule, kind))
                yield return word;
    }

    private static IEnumerable<long> WordsOf(RuleTerm rule, RecordKind kind)
    {
        yield return Word.Revision(kind, rule.Rule, rule.Revision);
        foreach (var outcome in EachOutcome)
            if (rule.Outcomes.HasFlag(outcome))
                yield return Word.Rule(kind, outcome, rule.Rule);
        foreach (var finding in rule.Missing)
        {
            yield return Word.Missing(kind, finding);
            yield return Word.Missing(kind, finding, rule.Rule);
        }
    }

    private static void Count(RuleTerm rule, PackReference pack, string month, IndexRows to)
    {
        var outcomes = rule.Outcomes;
        if (outcomes.HasFlag(RuleOutcomes.Fired)) One(TallyOf.Fired);
        if (outcomes.HasFlag(RuleOutcomes.Shown)) One(TallyOf.Shown);
        if (outcomes.HasFlag(RuleOutcomes.Unknown)) One(TallyOf.Unknown);
        if (outcomes.HasFlag(RuleOutcomes.Borderline)) One(TallyOf.Borderline);
        if ((outcomes & (RuleOutcomes.Fired | RuleOutcomes.Borderline)) != 0) One(TallyOf.Considered);
        foreach (var finding in rule.Missing.Distinct(StringComparer.Ordinal)) One(TallyOf.Missing, finding);

        void One(TallyOf what, string detail = "") => to.Count(new TallyKey(rule.Rule, pack.Name, pack.Version, month, what, detail), 1);
    }
}
