using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Text;
using FindingRules.Model.Truths;

namespace FindingRules.Cases;

/// <summary>
/// What a case expects against what came. <c>concludes</c>, <c>held</c>, <c>conflicts</c>, <c>next</c>, <c>done</c>,
/// <c>cautions</c>, <c>borderline</c> and <c>probabilities</c> are the whole of what may come; the other lists name what must be among it.
/// </summary>
internal static class CaseComparison
{
    public static IEnumerable<Message> Of(Case @case, Outcome outcome, Reading reading)
    {
        var rules = new RuleExpectations(@case, outcome);
        var lists = Lists(@case.Expect, reading).Where(list => !list.Expected.IsDefault);
        return
        [
            .. rules.Check(),
            .. lists.SelectMany(list => list.Check(@case)),
            .. ImpressionComparison.Of(@case, reading),
        ];
    }

    public static ImmutableSortedSet<string> TrueRules(Outcome outcome) => outcome.Rules
        .Where(r => r.Truth == Truth.True)
        .Select(r => r.Rule.Id)
        .ToImmutableSortedSet(StringComparer.Ordinal);

    private static IEnumerable<ListExpectation> Lists(CaseExpectation expect, Reading reading) =>
    [
        new("concludes", expect.Concludes, true, [.. reading.Suggestions.Select(s => Came($"{s.Subject} {s.Topic} {s.Value}", s.Rules))]),
        new("held", expect.Held, true, [.. reading.Held.Select(h => Came($"{h.Subject} {h.Topic}", h.Rules))]),
        new("conflicts", expect.Conflicts, true, [.. reading.Conflicts.Select(c =>
            Came($"{c.Subject} {c.Topic}", [.. c.Values.SelectMany(v => v.Rules)]))]),
        new("next", expect.Next, true, [.. reading.NextSteps.Where(s => !s.IsDone).Select(s => Came(s.Step, s.Rules))]),
        new("done", expect.Done, true, [.. reading.NextSteps.Where(s => s.IsDone).Select(s => Came(s.Step, s.Rules))]),
        new("cautions", expect.Cautions, true, [.. reading.Cautions.Select(c => Came(c.Caution, c.Rules))]),
        new("borderline", expect.Borderline, true, [.. reading.Borderline.Select(b => Came(b.Rule.Id, []))]),
        new("probabilities", expect.Probabilities, true, [.. reading.Probabilities.Select(p => Came($"{p.Subject} {p.After}", p.Rules))]),
        new("asks", expect.Asks, false, [.. reading.AskNext.Select(m => Came($"{m.Subject} {m.Finding}", []))]),
    ];

    private static CameOut Came(string text, ImmutableArray<RuleReference> rules) =>
        new(text, [.. rules.Select(r => r.Id).Distinct(StringComparer.Ordinal)]);
}

internal sealed record CameOut(string Text, ImmutableArray<string> Rules);

/// <param name="IsWhole">Nothing may come that is not expected.</param>
internal sealed record ListExpectation(string Word, ImmutableArray<Expected> Expected, bool IsWhole, ImmutableArray<CameOut> Came)
{
    public IEnumerable<Message> Check(Case @case)
    {
        string[] came = [.. Came.Select(c => c.Text).Distinct(StringComparer.Ordinal)];
        foreach (var expected in Expected)
            if (!came.Contains(expected.Text))
                yield return CaseMessages.DidNotCome(expected.Location, @case.Id, Word, expected.Text, came);
        if (!IsWhole) yield break;
        foreach (var extra in Came.DistinctBy(c => c.Text))
            if (!Expected.Any(e => e.Text == extra.Text))
                yield return CaseMessages.CameUnexpected(PlaceOfList(@case), @case.Id, Word, extra.Text, extra.Rules);
    }

    private Location PlaceOfList(Case @case) => Expected.IsEmpty
        ? @case.DeclaredAt
        : Expected[0].Location with { Span = Expected[0].Location.Span.Through(Expected[^1].Location.Span) };
}
