using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Testing.Generators;

/// <summary>
/// A small vocabulary with every sort of finding: a kind that is like another, structures paired and not, and normals
/// and precisions that some samples declare and others do not.
/// </summary>
internal static class VocabularyDrawing
{
    public const int GreatestLength = 12;

    public static Vocabulary Make(Draw draw)
    {
        var surface = Axis("surface", "bursal", "intrasubstance", "articular");
        var course = Axis("course", "proximal", "middle", "distal", "insertion");
        var tendon = Kind("tendon", null,
            Choice("echo", draw.Chance(60) ? "fibrillar" : null, "fibrillar", "hypoechoic", "anechoic"),
            Sign("shadowing", draw.Of<bool?>(null, false, true)),
            Length(draw, "thickness"),
            Length(draw, "gap"));
        var cuff = Kind("cuff-tendon", tendon,
            Extent("fluid", surface, draw.Chance(60)),
            Length(draw, "tear-length"));
        var fascia = Kind("fascia", null,
            Choice("outline", draw.Chance(60) ? "smooth" : null, "smooth", "nodular"),
            Extent("thickening", course, draw.Chance(50)),
            Sign("nodule", draw.Of<bool?>(null, false)),
            Length(draw, "thickness"));
        Structure[] always = [Structure("supraspinatus", cuff, true), Structure("midline-band", fascia, false)];
        Structure[] often =
        [
            Structure("infraspinatus", cuff, true), Structure("biceps", tendon, true),
            Structure("central-tendon", tendon, false), Structure("plantar-fascia", fascia, true),
        ];
        return Vocabulary(
            [surface, course], [tendon, cuff, fascia], [.. always, .. draw.Some(often, 60)],
            [
                Choice("modality", null, "ultrasound", "radiograph", "mri"), Sign("trauma"),
                Measure("age", Unit.Year, Interval.Closed(0, 120 * 12), isWhole: true),
            ]);
    }

    private static Finding Length(Draw draw, string name) => Measure(
        name, Unit.Millimetre, Interval.Closed(0, GreatestLength), draw.Of<Rational>(0, new Rational(1, 2), 1),
        draw.Chance(50) ? Interval.Closed(draw.Between(0, 3), draw.Between(4, 8)) : null);
}
