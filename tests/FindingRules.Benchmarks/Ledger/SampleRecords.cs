using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Records;

namespace FindingRules.Benchmarks.Ledger;

/// <summary>Readings of about 3 KB, of the shape that a shoulder study has.</summary>
internal static class SampleRecords
{
    private const int Rules = 400;
    private static readonly string[] Structures = ["supraspinatus", "infraspinatus", "subscapularis", "teres-minor", "biceps"];
    private static readonly string[] Values = ["full-thickness", "bursal-sided", "articular-sided", "intrasubstance", "none"];

    public static PackTexts Pack { get; } = MakePack();

    public static ReadingEntry Reading(int number, DateTimeOffset? time = null)
    {
        var study = Study(number);
        return new ReadingEntry
        {
            Pack = Pack.Pack,
            Engine = "0.1.0",
            Actor = "report-editor",
            Study = study,
            Reading = Answer(number, 3072 - study.Length - 560),
            Terms = Terms(number, time ?? DateTimeOffset.UnixEpoch),
        };
    }

    // About as many words as a study with five structures brings: most rules are about something else.
    private static IndexTerms Terms(int number, DateTimeOffset time) => new()
    {
        Study = string.Create(CultureInfo.InvariantCulture, $"S-{number}-{time.Ticks % 997}"),
        Subjects = [.. Structures.Take(1 + (number % 4)).Select(s => $"{(number % 2 == 0 ? "right" : "left")} {s}")],
        Topics = [new TopicTerm("tear-depth", Values[number % 5]),
            new TopicTerm("tendon-state", number % 7 == 0 ? "thickened" : "normal")],
        Rules =
        [
            .. Enumerable.Range(0, 6).Select(i => new RuleTerm(
                $"RULE-{Spread(number, i):000}", "5f3a9c01", i switch
                {
                    < 3 => RuleOutcomes.Fired | RuleOutcomes.Shown,
                    3 => RuleOutcomes.Fired | RuleOutcomes.Borderline,
                    _ => RuleOutcomes.Unknown,
                },
                i < 4 ? ImmutableArray<string>.Empty : [$"finding-{Spread(number, i) % 40}"])),
        ],
    };

    private static int Spread(int number, int i) => (int)(((uint)number * 2654435761u >> 7) + ((uint)i * 61u)) % Rules & int.MaxValue;

    private static byte[] Study(int number)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture,
            $$"""{ "study": "S-{{number}}", "pack": "benchmark", "facts": { "modality": "ultrasound" }, "subjects": [""");
        for (var i = 0; i < Structures.Length; i++)
            text.Append(i == 0 ? "" : ", ").Append(CultureInfo.InvariantCulture, $$"""
                { "structure": "{{Structures[i]}}", "side": "right", "findings": {
                "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists",
                "tear-length": "{{5 + ((number + i) % 40)}} mm", "thickness": { "value": {{4 + (number % 5)}}.{{i}}, "unit": "mm" } } }
                """);
        return Encoding.UTF8.GetBytes(text.Append("] }").ToString());
    }

    private static byte[] Answer(int number, int length)
    {
        var text = new StringBuilder($$"""{"study":"S-{{number}}","suggestions":[{"text":"Full-thickness tear, 14 mm.","restsOn":[""");
        while (text.Length < length - 120)
            text.Append("""{"subject":"right supraspinatus","finding":"fluid","value":"bursal to articular"},""");
        return Encoding.UTF8.GetBytes(text.Append("{}]}]}").ToString());
    }

    private static PackTexts MakePack()
    {
        var pack = new PackReference("benchmark", "1.0.0", new string('b', 64), "");
        var texts = new PackTexts(pack, [new PackText("pack.yaml", Encoding.UTF8.GetBytes("pack: benchmark\n...\n"))]);
        return texts with { Pack = pack with { TextDigest = texts.ComputeDigest() } };
    }
}
