using FindingRules.Model.Packs;
using FindingRules.Model.Readings;

namespace FindingRules.Tests.FrontDoor;

/// <summary>A reading with something in every part of it.</summary>
internal static class SampleReading
{
    private const string Notice = $"DEMONSTRATION, not approved by a clinician. {Pack.StandingNotice}";

    private static readonly RuleReference Cuff = new("CUFF-010", "0123456789ab");
    private static readonly RuleReference Hold = new("CUFF-030", "ba9876543210");
    private static readonly SourceNote Source = new(["F-RCT-07"], "Cofield 1982.", "secondary source read", "The pack puts 3 cm in large.");

    private static readonly Evidence Fluid =
        new("right supraspinatus", "fluid", "bursal to articular", "fluid spans bursal to articular surface", null, null, false);

    private static readonly Evidence Length =
        new("right supraspinatus", "tear-length", "29.5 mm", "tear-length below 3 cm", "30 mm", "0.5 mm", false);

    private static readonly Evidence Normal =
        new("right biceps", "position", "in-groove", "not biceps subluxed", null, null, true);

    public static Reading Full { get; } = new()
    {
        Pack = new PackIdentity("example", "1.0.0", new string('a', 64), new string('b', 64), true),
        Engine = "0.1.0",
        Study = "S-7F3K",
        Supersedes = "S-7F3J",
        Suggestions =
        [
            new("Full-thickness tear of the right supraspinatus tendon, 29.5 mm.", "tear-depth", "full-thickness", "definite",
                "right supraspinatus", new Code("http://snomed.info/sct", "202843000", "2026-01"), [Cuff],
                [Fluid, Normal], [Source], ["The source prints 3 cm in two bands; this pack puts it in large."], true),
        ],
        Calm = "Nothing to add.",
        NextSteps =
        [
            new("evaluate right subscapularis", "Look again at the right subscapularis tendon.", "routine", false, [],
                ["right biceps"], [new("BIC-004", "111111111111")], [Normal], []),
            new("ultrasound", "Ultrasound of the region.", "soon", true, ["modality ultrasound"], ["study"],
                [new("FB-002", "222222222222")], [], [Source]),
        ],
        Cautions =
        [
            new("position-overestimates", "The length was taken in a position that can overestimate it: modified-crass.",
                ["right supraspinatus"], [new("CUFF-040", "333333333333")], [Length]),
        ],
        Probabilities =
        [
            new("Probability of a foreign body after a negative finding: 2.3 %.", "study", "a foreign body", "negative", "10 %",
                "2.3 %", "7/300", "1 % to 5 %", "sensitivity 72 %, specificity 92 %", [new("FB-010", "444444444444")], [], [Source]),
        ],
        Held =
        [
            new("tear-depth", "left supraspinatus", ["bursal-sided"], ["One still image cannot tell."], [Hold], [Fluid]),
        ],
        Conflicts =
        [
            new("tear-depth", "left infraspinatus", [new("bursal-sided", [Cuff], [Fluid]), new("articular-sided", [Hold], [Fluid])]),
        ],
        Unknown =
        [
            .. Enumerable.Range(1, 7).Select(i => new UndecidedRule(new RuleReference($"TEN-01{i}", "555555555555"), "right biceps",
                "tendon-state thickened", [new("right biceps", "thickness"), new("left biceps", "thickness")], i == 1 ? ["TEN-010"] : [])),
        ],
        Borderline =
        [
            new(new RuleReference("tear-size.medium", "666666666666"), "right supraspinatus", true, "tear-size medium", [Length]),
        ],
        AskNext = [new("right biceps", "thickness", "thickness of the right long head of biceps tendon", ["TEN-010", "TEN-011"])],
        NotAssessed =
        [
            new("shoulder", "right subscapularis", ["fluid", "echo"], false),
            new("shoulder", "right biceps", ["position"], true),
        ],
        Notes = ["The right biceps was sent as normal, and its position departs from that."],
        ImpressionText = "Full-thickness tear of the right supraspinatus tendon, 29.5 mm. (Borderline: tear length 29.5 mm is 0.5 mm "
            + "from 30 mm.)\nNext: Look again at the right subscapularis tendon.\n" + Notice,
        Notice = Notice,
    };

    public static Reading Empty { get; } = new()
    {
        Pack = new PackIdentity("example", "1.0.0", new string('a', 64), new string('b', 64), false),
        Engine = "0.1.0",
        Study = "S-1",
        ImpressionText = $"No rule of this pack applies.\n{Pack.StandingNotice}",
        Notice = Pack.StandingNotice,
    };
}
