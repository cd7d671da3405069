using System.Text;
using System.Text.RegularExpressions;
using FindingRules.Model.Packs;

namespace FindingRules.Testing.Broken;

/// <summary>Files that are whole and are not where, or what, the manifest says.</summary>
internal static partial class PackFiles
{
    public static IEnumerable<BrokenPack> Disordered() =>
        Lost().Concat(Emptied()).Concat(Swapped()).Concat(Miscounted()).Concat(Strays()).Concat(Manifests.Select(m => m.Apply()));

    private static IEnumerable<BrokenPack> Lost() =>
        BrokenPack.Texts.Keys.Select(path => new BrokenPack($"{path}: lost", [.. ExamplePack.Plain.Files.Where(f => f.Path != path)]))
            .Append(new BrokenPack("no file at all", []));

    private static IEnumerable<BrokenPack> Emptied() =>
        from path in BrokenPack.Texts.Keys
        from text in new[] { "", "\n", "...\n", "# nothing\n...\n", "~\n...\n", "word\n...\n", "[]\n...\n", "{}\n...\n", "1: 2\n...\n" }
        select BrokenPack.Of($"nothing but `{Regex.Escape(text)}`", path, text);

    private static IEnumerable<BrokenPack> Swapped()
    {
        var paths = BrokenPack.Texts.Keys.ToArray();
        return paths.Select((path, i) => BrokenPack.Of($"text of {paths[(i + 1) % paths.Length]}", path, BrokenPack.Texts[paths[(i + 1) % paths.Length]]));
    }

    private static IEnumerable<BrokenPack> Miscounted() =>
        from count in Entries().Matches(BrokenPack.Texts["pack.yaml"])
        from instead in new[] { "0", "99", $"{int.Parse(count.Value, null) + 1}", $"{int.Parse(count.Value, null) - 1}", "99999999999999999999" }
        where instead != count.Value
        let text = BrokenPack.Texts["pack.yaml"]
        select BrokenPack.Of($"{count.Value} entries at {count.Index} became {instead}", "pack.yaml", text[..count.Index] + instead + text[(count.Index + count.Length)..]);

    private static IEnumerable<BrokenPack> Strays() =>
        from path in new[] { "stray.yaml", "more/rules.yaml", "RULES.yaml" }
        select new BrokenPack($"{path}: not listed", [.. ExamplePack.Plain.Files, new PackFile(path, Encoding.UTF8.GetBytes("rules: []\n...\n"))]);

    private static readonly Replacement[] Manifests =
    [
        new("pack.yaml", "rules: rules.yaml", "rules: ../rules.yaml"), new("pack.yaml", "rules: rules.yaml", "rules: /rules.yaml"),
        new("pack.yaml", "rules: rules.yaml", "rules: scales.yaml"), new("pack.yaml", "rules: rules.yaml", "rules: pack.yaml"),
        new("pack.yaml", "rules: rules.yaml", "rules: rulse.yaml"), new("pack.yaml", "rules: rules.yaml", "rule: rules.yaml"),
        new("pack.yaml", "rules: rules.yaml", "rules: Z:\\rules.yaml"), new("pack.yaml", "rules: rules.yaml", "rules: \"\""),
        new("pack.yaml", "{ rules: rules.yaml, entries: 12 }", "rules.yaml"), new("pack.yaml", "{ rules: rules.yaml, entries: 12 }", "{ rules: rules.yaml }"),
        new("pack.yaml", "{ rules: rules.yaml, entries: 12 }", "{ entries: 12 }"),
    ];

    [GeneratedRegex(@"(?<=entries: )\d+")]
    private static partial Regex Entries();
}
