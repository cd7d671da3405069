using System.Collections.Immutable;
using System.Text;
using FindingRules.Model.Packs;

namespace FindingRules.Testing;

/// <summary>
/// A pack as large as a country's departments together might write, the same one in every run: a hundred rules for each
/// kind, with the comparisons that such rules share. Its studies speak of four structures, whatever its size.
/// </summary>
public static class LargePack
{
    private const int RulesPerKind = TopicsPerKind * (ValuesPerTopic + 1);
    private const int TopicsPerKind = 20;
    private const int ValuesPerTopic = 4;
    private const string End = "...\n";

    private static readonly string[] Echoes = ["fibrillar", "hypoechoic", "anechoic", "heterogeneous"];
    private static readonly string[] States = ["regular", "frayed", "swollen", "displaced", "torn"];

    public static ImmutableArray<PackFile> Files(int rules)
    {
        var kinds = Enumerable.Range(0, rules / RulesPerKind).ToArray();
        (string Kind, string Text, int Count)[] files =
        [
            ("vocabulary", Vocabulary(kinds), 1 + (3 * kinds.Length)),
            ("references", "references:\n  practice: { facts: [P-1], cites: Made up for measuring., status: common-practice }\n", 1),
            ("topics", Lines("topics:", kinds, Topics), TopicsPerKind * kinds.Length),
            ("next-steps", "next-steps:\n  second-look: { says: \"Look at the {subject} again.\", urgency: routine }\n", 1),
            ("cautions", "cautions:\n  mind-the-angle: { says: Mind the angle of the beam., source: [practice] }\n", 1),
            ("rules", Lines("rules:", kinds, Rules), rules),
        ];
        var manifest = new StringBuilder(
            "pack: large\ntitle: Large pack for measuring\nversion: 1.0.0\nlanguage: 1\ndepartment: Nobody (invented)\napproval: demonstration\n"
            + "caution: >\n  Support for a qualified reader, not a diagnosis. Local protocols and licensed practice decide.\nfiles:\n");
        foreach (var (kind, _, count) in files) manifest.Append($"  - {{ {kind}: {kind}.yaml, entries: {count} }}\n");
        return [File("pack", manifest.ToString()), .. files.Select(f => File(f.Kind, f.Text))];
    }

    /// <summary>Four structures, six findings each: about what one shoulder has.</summary>
    public static string Study { get; } = $$"""
        { "study": "S-1", "subjects": [{{string.Join(", ", Enumerable.Range(0, 4).Select(Subject))}}] }
        """;

    private static string Subject(int kind) => $$"""
        { "structure": "structure-{{kind}}-a", "side": "right", "findings": { "echo": "{{Echoes[kind]}}", "state": "{{States[kind]}}",
          "thickness": "{{3 + kind}}.5 mm", "length": { "value": {{10 + kind}}, "unit": "mm" }, "fluid": { "from": "shallow", "to": "middle" }, "shadowing": "absent" } }
        """;

    private static string Vocabulary(int[] kinds) =>
        "axes:\n  depth: [shallow, middle, deep]\n"
        + Lines("kinds:", kinds, Kind)[..^End.Length]
        + Lines("structures:", kinds, k => new[] { "a", "b" }
            .Select(s => $"  structure-{k}-{s}: {{ kind: kind-{k}, title: structure {k} {s}, region: region-{k % 10}, paired: true }}\n"));

    private static IEnumerable<string> Kind(int kind) =>
    [
        $$"""
          kind-{{kind}}:
            findings:
              echo: { choose: [{{string.Join(", ", Echoes)}}], normal: fibrillar }
              state: { choose: [{{string.Join(", ", States)}}], normal: regular }
              thickness: { measure: mm, plausible: 0.5 mm to 30 mm, precision: 0.5 mm, normal: 2 mm to 8 mm }
              length: { measure: mm, plausible: 1 mm to 80 mm, precision: 1 mm }
              fluid: { extent: depth, normal: none }
              shadowing: { sign: true, normal: absent }
              flow: { sign: true, normal: absent }

        """,
    ];

    private static IEnumerable<string> Topics(int kind) => Enumerable.Range(0, TopicsPerKind).Select(topic =>
        $"  topic-{kind}-{topic}:\n    for: each kind-{kind}\n    values:\n"
        + string.Concat(Enumerable.Range(0, ValuesPerTopic).Select(v => $"      value-{v}: {{ says: \"The {{subject}} has value {v} of topic {topic}{{, length}}.\" }}\n")));

    private static IEnumerable<string> Rules(int kind) =>
        from topic in Enumerable.Range(0, TopicsPerKind)
        from rule in Enumerable.Range(0, ValuesPerTopic + 1)
        let conclusion = rule < ValuesPerTopic ? $"topic-{kind}-{topic} value-{rule}" : topic % 2 == 0 ? "second-look" : "mind-the-angle"
        select $"""
              - id: KIND{kind}-{topic:00}{rule}
                for: each kind-{kind}
                rule: state {States[topic % States.Length]} and {(rule < ValuesPerTopic ? Answer(kind, topic, rule) : Aside(topic))} → {conclusion}
                because: Made up for measuring.
                source: [practice]

            """;

    // Thresholds come from short lists, as in practice: many rules share a comparison.
    private static string Answer(int kind, int topic, int value) => (topic / States.Length) switch
    {
        0 => Band("thickness", 2 + (kind % 3), value),
        1 => $"no shadowing and {Band("length", 6 + (kind % 4), value)}",
        2 => $"(echo hypoechoic or anechoic) and {Band("thickness", 3 + (kind % 2), value)}",
        _ => $"topic-{kind}-{topic - (3 * States.Length)} value-{value} and fluid spans shallow to middle",
    };

    private static string Band(string measure, int first, int band) => band switch
    {
        0 => $"{measure} below {first} mm",
        ValuesPerTopic - 1 => $"{measure} at least {first + (3 * (band - 1))} mm",
        _ => $"{measure} at least {first + (3 * (band - 1))} mm and {measure} below {first + (3 * band)} mm",
    };

    private static string Aside(int topic) => (topic / States.Length) switch
    {
        0 => "flow",
        1 => "(fluid reaches deep or not (echo fibrillar))",
        2 => "thickness >= 1.5 contralateral thickness",
        _ => "length assessed and length above 8 mm",
    };

    private static string Lines(string head, int[] kinds, Func<int, IEnumerable<string>> of) =>
        $"{head}\n{string.Concat(kinds.SelectMany(of))}{End}";

    private static PackFile File(string kind, string text) =>
        new($"{kind}.yaml", Encoding.UTF8.GetBytes(text.EndsWith(End, StringComparison.Ordinal) ? text : text + End));
}
