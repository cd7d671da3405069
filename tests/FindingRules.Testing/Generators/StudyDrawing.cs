using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Testing.Generators;

/// <summary>Studies for a pack: sides, lesions, bounds, gaps, normal and not assessable subjects, protocols, earlier studies.</summary>
public static class StudyDrawing
{
    public static Study Make(Draw draw, Pack pack)
    {
        var (vocabulary, share) = (pack.Vocabulary, draw.Of(45, 75, 95));
        var hasEarlier = draw.Chance(45);
        return new Study
        {
            Key = "S-1",
            Location = Nowhere,
            Facts = Findings(draw, vocabulary.StudyFacts.Values, share),
            Subjects = Subjects(draw, vocabulary, share),
            Earlier = hasEarlier ? Subjects(draw, vocabulary, share) : null,
            EarlierFacts = hasEarlier ? Findings(draw, vocabulary.StudyFacts.Values, share) : Model.Studies.Findings.None,
            Protocols = [.. draw.Some(pack.Protocols.Values, 40).Select(p => new ProtocolUse(p, ASide(draw), Nowhere))],
        };
    }

    public static FindingValue Value(Draw draw, FindingType type) => type switch
    {
        ChoiceType choice => new ChoiceValue(draw.Of(choice.Values)),
        SignType => new SignValue(draw.Chance(50)),
        ExtentType extent => Extent(draw, extent.Axis),
        MeasureType { IsWhole: true } years => Measured(Interval.Point(draw.Between(20, 90) * years.Unit.InBase), years, isBound: false),
        MeasureType measure => Length(draw, measure),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static ImmutableArray<StudySubject> Subjects(Draw draw, Vocabulary vocabulary, int share)
    {
        var candidates = vocabulary.Structures.Values.SelectMany(s =>
            !s.IsPaired ? [(s, Side.None)]
            : draw.Chance(12) ? [(s, Side.Unknown)]
            : new[] { (s, Side.Left), (s, Side.Right) });
        return [.. draw.Shuffle(draw.Some(candidates.ToList(), 78)).Select(c => Subject(draw, c.Item1, c.Item2, share))];
    }

    private static StudySubject Subject(Draw draw, Structure structure, Side side, int share)
    {
        var isNormal = draw.Chance(22);
        var findings = structure.Kind.Findings.Values;
        var lesions = draw.Chance(28)
            ? draw.Some(["L1", "L2", "L3"], 65).Select(id => new Lesion(id, Findings(draw, findings, share), Nowhere))
            : [];
        return new StudySubject(
            structure, side, isNormal, !isNormal && draw.Chance(7), Findings(draw, findings, isNormal ? 12 : share),
            [.. draw.Shuffle(lesions)], Nowhere);
    }

    private static Findings Findings(Draw draw, IEnumerable<Finding> findings, int share) => new(ByName(
        draw.Some(findings, share).Select(f => new SentFinding(
            f, draw.Chance(4) ? new NotAssessableValue() : Value(draw, f.Type), Nowhere)),
        f => f.Finding.Name));

    private static Side ASide(Draw draw) => draw.Weighted((45, Side.Left), (45, Side.Right), (10, Side.Unknown));

    private static ExtentValue Extent(Draw draw, Axis axis)
    {
        var stretches = new List<Stretch>();
        for (var at = 0; at < axis.Points.Length; at++)
        {
            if (!draw.Chance(55)) continue;
            var to = draw.Between(at, axis.Points.Length - 1);
            stretches.Add(new Stretch(at, to));
            at = to + 1;
        }
        return new ExtentValue(axis, [.. stretches]);
    }

    private static MeasuredValue Length(Draw draw, MeasureType measure)
    {
        var half = draw.Chance(20) ? new Rational(1, 2) : Rational.Zero;
        var value = draw.Between(0, VocabularyDrawing.GreatestLength - 1) + half;
        var bound = draw.Below(100) switch
        {
            < 72 => Interval.Point(value),
            < 78 => new Interval(null, false, value + 1, false),
            < 84 => new Interval(null, false, value, true),
            < 89 => new Interval(value, false, null, false),
            < 94 => new Interval(value, true, null, false),
            _ => Interval.Closed(value, value + draw.Between(1, 3)),
        };
        return Measured(bound.Intersect(measure.Plausible), measure, !bound.IsPoint);
    }

    private static MeasuredValue Measured(Interval interval, MeasureType type, bool isBound) =>
        new(interval, type.Unit, isBound, interval.IsPoint ? $"{interval.Low} {type.Unit.Name}" : "a bound");
}
