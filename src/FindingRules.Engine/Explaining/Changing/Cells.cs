using System.Collections.Immutable;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>The values of a finding in as few cells as the tests need.</summary>
internal static class Cells
{
    private const int FewExtents = 5;

    /// <param name="now">What is known of it; the cell that it lies in is not among the result.</param>
    /// <param name="normal">Whether it departs from normal matters too.</param>
    public static ImmutableArray<Cell> Others(
        FindingType type, ImmutableArray<SlotTest> tests, FindingValue? now, bool normal) => type switch
        {
            ChoiceType choice => Choices(choice, tests, (now as ChoiceValue)?.Value, normal),
            SignType => Signs((now as SignValue)?.IsPresent),
            ExtentType extent => Extents(extent, tests, now as ExtentValue, normal),
            MeasureType measure => MeasureCells.Others(measure, tests, now as MeasuredValue, normal),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static ImmutableArray<Cell> Choices(ChoiceType type, ImmutableArray<SlotTest> tests, string? now, bool normal)
    {
        string Signature(string value) => string.Concat(tests.OfType<IsOneOf>().Select(t => t.Values.Contains(value) ? '1' : '0'))
            + (normal && value == type.Normal ? "n" : "");
        return
        [
            .. type.Values.GroupBy(Signature).Where(g => now is null || !g.Contains(now)).Select(g =>
                new Cell(new ChoiceValue(g.First()), g.First(), Either(g))),
        ];
    }

    private static ImmutableArray<Cell> Signs(bool? now) =>
    [
        .. new[] { true, false }.Where(p => p != now).Select(p => new Cell(new SignValue(p), Word(p), Word(p))),
    ];

    private static string Word(bool isPresent) => isPresent ? "present" : "absent";

    private static ImmutableArray<Cell> Extents(ExtentType type, ImmutableArray<SlotTest> tests, ExtentValue? now, bool normal)
    {
        string Signature(ImmutableArray<Stretch> s) => string.Concat(tests.OfType<Reaches>().Select(t => t.Holds(s) ? '1' : '0'))
            + (normal && s.IsEmpty ? "n" : "");
        var own = now is null ? null : Signature(now.Stretches);
        return
        [
            .. AllStretches(type.Axis.Points.Length).GroupBy(Signature).Where(g => g.Key != own)
                .Select(g => (Nearest: g.MinBy(s => Distance(s, now))!, All: g.ToList()))
                .Select(g => (Value: new ExtentValue(type.Axis, g.Nearest), g.All))
                .Select(g => new Cell(g.Value, g.Value.ToString(), Like(g.Value, [.. g.All.Select(s => new ExtentValue(type.Axis, s))]))),
        ];
    }

    /// <summary>How many points differ from what was sent, and then how many stretches it takes.</summary>
    private static (int, int) Distance(ImmutableArray<Stretch> stretches, ExtentValue? now)
    {
        var before = Points(now?.Stretches ?? []);
        var after = Points(stretches);
        return (after.Except(before).Count() + before.Except(after).Count(), stretches.Length);
    }

    private static HashSet<int> Points(ImmutableArray<Stretch> stretches) =>
        [.. stretches.SelectMany(s => Enumerable.Range(s.From, s.To - s.From + 1))];

    /// <summary>Every set of stretches along so many points: between two of them lies a point, as a study must send it.</summary>
    private static IEnumerable<ImmutableArray<Stretch>> AllStretches(int points, int from = 0)
    {
        yield return [];
        for (var start = from; start < points; start++)
            for (var end = start; end < points; end++)
                foreach (var rest in AllStretches(points, end + 2))
                    yield return [new Stretch(start, end), .. rest];
    }

    private static string Like(ExtentValue nearest, IReadOnlyCollection<ExtentValue> all) => all.Count switch
    {
        1 => nearest.ToString(),
        <= FewExtents => string.Join("; ", all.OrderBy(v => !v.Equals(nearest)).Select(v => v.ToString())),
        _ => $"{nearest}, or another of {all.Count} that the rules take alike",
    };

    private static string Either(IEnumerable<string> values)
    {
        var all = values.Select(v => v.Replace('-', ' ')).ToList();
        return all.Count <= 4 ? string.Join(" or ", all) : $"{string.Join(", ", all.Take(3))} or one of {all.Count - 3} more";
    }
}
