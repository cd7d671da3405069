using System.Text;

namespace FindingRules.Testing.Broken;

/// <summary>What YAML has and packs do without, and what is not YAML at all.</summary>
internal static class PackSyntax
{
    private const string Title = "title: tear size (Cofield)";

    private static readonly Replacement[] Extras =
    [
        new("scales.yaml", Title, "title: &t tear size"), new("scales.yaml", Title, "title: *t"), new("scales.yaml", Title, "title: !!str tear size"),
        new("scales.yaml", Title, "title: !shell ls"), new("scales.yaml", Title, "title: !<tag:yaml.org,2002:python/object> x"),
        new("scales.yaml", Title, "<<: { title: tear size }"), new("scales.yaml", Title, "? |\n      title\n    : tear size"),
        new("scales.yaml", Title, "? [title, other]\n    : tear size"), new("scales.yaml", Title, "? { a: b }\n    : tear size"),
        new("scales.yaml", Title, "&anchor title: tear size"), new("scales.yaml", Title, "!!str title: tear size"),
        new("scales.yaml", "scales:\n", "%YAML 1.1\n---\nscales: &all\n"), new("scales.yaml", "scales:\n", "--- !pack\nscales:\n"),
        new("scales.yaml", "scales:\n", "other: 1\n---\nscales:\n"), new("scales.yaml", "\n...\n", "\n...\n---\nscales: {}\n...\n"),
        new("scales.yaml", "\n...\n", "\n---\nother: 1\n...\n"), new("scales.yaml", "\n...\n", "\n...\nrules: {}\n...\n"),
        new("scales.yaml", "scales:\n", "scales: &all\n"), new("scales.yaml", "source: [cofield-size]", "source: [*x, *x]"),
        new("scales.yaml", "source: [cofield-size]", "source: &x [cofield-size, *x]"),
    ];

    private static readonly Replacement[] Errors =
    [
        new("rules.yaml", "because: A defect that crosses", "because: \"A defect that crosses"), new("rules.yaml", "source: [trade]", "source: [trade"),
        new("rules.yaml", "source: [trade]", "source: trade]"), new("rules.yaml", "source: [trade]", "source: {trade"), new("rules.yaml", "    for: each", "\tfor: each"),
        new("rules.yaml", "    for: each", "   for: each"), new("rules.yaml", "    for: each", "      for: each"), new("rules.yaml", "for: each", "for each"),
        new("rules.yaml", "for: each", "for:each"), new("rules.yaml", "for: each cuff", "for: each: cuff"), new("rules.yaml", "rules:", "rules"),
        new("rules.yaml", "rules:", "rules: ["), new("rules.yaml", "rules:", "rules: {"), new("rules.yaml", "rules:", "- rules:"), new("rules.yaml", "rules:", "'rules:"),
        new("rules.yaml", "rule: |", "rule: |9"), new("rules.yaml", "rule: |", "rule: |-+"), new("rules.yaml", "rule: |", "rule: @"), new("rules.yaml", "rule: |", "rule: `"),
        new("rules.yaml", "rule: |", "rule: %"), new("rules.yaml", "      → hold", "    → hold"), new("rules.yaml", "  - id: CUFF-020", " - id: CUFF-020"),
        new("rules.yaml", "  - id: CUFF-020", "  -id: CUFF-020"), new("rules.yaml", "  - id: CUFF-020", "  - - id: CUFF-020"), new("rules.yaml", "  - id: CUFF-020", "    id: CUFF-020"),
        new("topics.yaml", "\"Full-thickness tear", "\"\\q Full-thickness tear"), new("topics.yaml", "\"Full-thickness tear", "\"\\uD800 Full-thickness tear"),
        new("topics.yaml", "\"Full-thickness tear", "\"\\U00110000 Full-thickness tear"), new("topics.yaml", "\"Full-thickness tear", "\"\\0 Full-thickness tear"),
        new("topics.yaml", "\"Full-thickness tear", "\"\\x07 Full-thickness tear"), new("topics.yaml", "\"Full-thickness tear", "\"\\u202E Full-thickness tear"),
        new("topics.yaml", ".\"\n", ".\" \"x\"\n"), new("topics.yaml", "topics:\n", "topics:\n  [1,\n2: 3\n"), new("topics.yaml", "topics:\n", "topics: >\n"),
    ];

    public static IEnumerable<BrokenPack> DoneWithout() => Extras.Select(m => m.Apply()).Append(AliasBomb());

    public static IEnumerable<BrokenPack> Wrong() => Errors.Select(m => m.Apply());

    private static BrokenPack AliasBomb()
    {
        var text = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (var i = 1; i < 12; i++)
            text.Append($"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 9))}]\n");
        return BrokenPack.Of("an alias bomb", "cautions.yaml", text.Append("cautions: *a11\n...\n").ToString());
    }
}
