using System.Collections.Immutable;
using FindingRules.Engine.Asking;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Readings;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The missing findings of the subjects present, those first whose answers settle the weightiest consequences (see
/// <see cref="Worth"/>); among equals those for which most undecided rules wait, then by subject and name.
/// </summary>
internal static class AskNextWriter
{
    public static ImmutableArray<MissingFinding> Write(Decided decided, ImmutableArray<UndecidedRule> undecided)
    {
        var asked = Asked(decided.Examination, undecided);
        // The only question needs no weighing.
        return asked.Count > 1 ? [.. Weigh(decided, asked).Select(w => w.Missing)] : [.. asked.Select(a => a.Missing())];
    }

    public static IEnumerable<Weighed> Weigh(Decided decided, ImmutableArray<UndecidedRule> undecided) =>
        Weigh(decided, Asked(decided.Examination, undecided));

    private static List<Weighed> Weigh(Decided decided, List<AskedFinding> asked)
    {
        var weighed = new List<Weighed>(asked.Count);
        if (asked.Count == 0) return weighed;
        var questioner = new Questioner(decided);
        foreach (var one in asked)
            weighed.Add(new Weighed(one.Missing(), one.Index, one.Finding, questioner.WorthOf(one.Index, one.Finding)));
        weighed.Sort();
        return weighed;
    }

    private static List<AskedFinding> Asked(Examination examination, ImmutableArray<UndecidedRule> undecided)
    {
        var asked = new List<AskedFinding>();
        var known = new Dictionary<MissingKey, AskedFinding?>();
        foreach (var rule in undecided)
            foreach (var key in rule.Missing)
            {
                if (!known.TryGetValue(key, out var one))
                {
                    known.Add(key, one = Find(examination, key));
                    if (one is not null) asked.Add(one);
                }
                one?.Settles.Add(rule.Rule.Id);
            }
        return asked;
    }

    /// <summary>Null for what cannot be asked: a finding of something not present, or no finding at all.</summary>
    private static AskedFinding? Find(Examination examination, MissingKey key)
    {
        for (var i = 0; i < examination.Count; i++)
        {
            if (!examination[i].IsPresent || examination[i].Subject.Key != key.Subject) continue;
            foreach (var known in examination[i].Plan.Findings)
                if (known.Finding.Name == key.Finding)
                    return new AskedFinding(key, examination[i], i, known.Finding);
            return null;
        }
        return null;
    }

    private sealed record AskedFinding(MissingKey Key, Instance At, int Index, Finding Finding)
    {
        public Once<string> Settles { get; } = new();

        public MissingFinding Missing() =>
            new(Key.Subject, Key.Finding, $"{At.Subject.Title}: {Finding.Title}", Settles.Sorted(string.CompareOrdinal));
    }
}

/// <summary>A missing finding and what hangs on it.</summary>
internal sealed record Weighed(MissingFinding Missing, int Index, Finding Finding, Worth Worth) : IComparable<Weighed>
{
    /// <summary>What is asked first comes first.</summary>
    public int CompareTo(Weighed? other)
    {
        if (other is null) return 1;
        if (other.Worth.CompareTo(Worth) is var byWorth and not 0) return byWorth;
        if (other.Missing.Settles.Length != Missing.Settles.Length) return other.Missing.Settles.Length - Missing.Settles.Length;
        var bySubject = string.CompareOrdinal(Missing.Subject, other.Missing.Subject);
        return bySubject != 0 ? bySubject : string.CompareOrdinal(Missing.Finding, other.Missing.Finding);
    }
}
