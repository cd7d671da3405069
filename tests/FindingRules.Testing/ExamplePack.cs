using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using FindingRules.Model.Packs;

namespace FindingRules.Testing;

/// <summary>The pack in <c>tests/packs/example</c>, as it stands or with one of its files replaced.</summary>
public sealed partial class ExamplePack
{
    private const string Manifest = "pack.yaml";
    private readonly ImmutableSortedDictionary<string, string> _texts;

    private ExamplePack(ImmutableSortedDictionary<string, string> texts) => _texts = texts;

    public static ExamplePack Plain { get; } = FromFolder(Repository.PathOf("tests", "packs", "example"));

    /// <summary>What the manifest calls the files: vocabulary, topics, rules….</summary>
    public static ImmutableArray<string> Kinds { get; } =
    [
        .. ManifestLine().Matches(Plain._texts[Manifest]).Select(m => m.Groups["kind"].Value),
    ];

    public ImmutableArray<PackFile> Files =>
        [.. _texts.Select(t => new PackFile(t.Key, Encoding.UTF8.GetBytes(t.Value)))];

    public static ExamplePack FromFolder(string folder) => new(Directory.EnumerateFiles(folder, "*.yaml")
        .ToImmutableSortedDictionary(path => Path.GetFileName(path), File.ReadAllText, StringComparer.Ordinal));

    public PackLoad Load(LoadLimits? limits = null) => CompiledPack.Load(Files, limits);

    /// <summary>The pack as it stands, which must load.</summary>
    public CompiledPack Compile() =>
        Load() is { Pack: { } pack } ? pack : throw new InvalidOperationException(string.Join('\n', Load().Messages.Select(m => m.Text)));

    /// <summary>The text of a file, by its kind (<c>rules</c>; <c>pack</c> for the manifest).</summary>
    public string TextOf(string kind) => _texts[PathOf(kind)];

    /// <summary>Another text in place of the file of this kind, and nothing else changed.</summary>
    public ExamplePack Replace(string kind, string text) => new(_texts.SetItem(PathOf(kind), text));

    /// <summary>
    /// Another text in place of the file of this kind. The manifest then states the new number of entries, and what
    /// speaks of rules that are gone (withdrawals, cases) goes with them.
    /// </summary>
    public ExamplePack With(string kind, string text)
    {
        var replaced = Replace(kind, text);
        if (kind == "pack") return replaced;
        var gone = RuleIds().Except(replaced.RuleIds());
        return (kind == "cases" ? replaced : replaced.WithoutCasesOf(gone)).WithoutWithdrawalsOf(gone).WithCount(kind, text);
    }

    /// <summary>Without the files that the manifest does not name: a page that shows a manifest means those it lists.</summary>
    public ExamplePack WithListedFilesOnly() => new(_texts.RemoveRange(
        _texts.Keys.Where(path => path != Manifest && !_texts[Manifest].Contains($": {path},", StringComparison.Ordinal))));

    private string PathOf(string kind) => kind == "pack" || !_texts.ContainsKey($"{kind}.yaml") ? Manifest : $"{kind}.yaml";

    private ExamplePack WithCount(string kind, string text)
    {
        var manifest = Regex.Replace(_texts[Manifest], $@"(?<=- \{{ {kind}: .*entries: )\d+", $"{EntryCount.Of(text)}");
        return new ExamplePack(_texts.SetItem(Manifest, manifest));
    }

    private ExamplePack WithoutWithdrawalsOf(ImmutableHashSet<string> gone)
    {
        var lines = _texts[Manifest].Split('\n').Where(line => !gone.Any(id => line.Contains($"{{ rule: {id},", StringComparison.Ordinal)));
        var manifest = string.Join('\n', lines).Replace("withdrawn:\nreasons:", "reasons:", StringComparison.Ordinal);
        return new ExamplePack(_texts.SetItem(Manifest, manifest));
    }

    private ExamplePack WithoutCasesOf(ImmutableHashSet<string> gone)
    {
        if (gone.IsEmpty || !_texts.TryGetValue("cases.yaml", out var cases)) return this;
        var blocks = CaseStart().Split(cases);
        var kept = blocks.Skip(1).Select(b => b.Replace("...\n", "", StringComparison.Ordinal))
            .Where(b => !gone.Any(id => Mentions(b, id))).ToArray();
        if (kept.Length > 0)
        {
            var text = $"{blocks[0]}{string.Concat(kept)}...\n";
            return new ExamplePack(_texts.SetItem("cases.yaml", text)).WithCount("cases", text);
        }
        var manifest = Regex.Replace(_texts[Manifest], @".*- \{ cases: .*\n", "");
        return new ExamplePack(_texts.Remove("cases.yaml").SetItem(Manifest, manifest));
    }

    private static bool Mentions(string text, string id) =>
        Regex.IsMatch(text, $@"(?<![A-Za-z0-9.-]){Regex.Escape(id)}(?![A-Za-z0-9-])");

    private ImmutableHashSet<string> RuleIds()
    {
        var rules = RuleId().Matches(_texts.GetValueOrDefault("rules.yaml", "")).Select(m => m.Groups["id"].Value);
        var scale = "";
        var bands = new List<string>();
        foreach (Match match in ScaleOrBand().Matches(_texts.GetValueOrDefault("scales.yaml", "")))
            if (match.Groups["scale"] is { Success: true } name) scale = name.Value;
            else bands.Add($"{scale}.{match.Groups["band"].Value}");
        return [.. rules, .. bands];
    }

    [GeneratedRegex(@"^  - \{ (?<kind>[a-z-]+): [^,]+, entries: ", RegexOptions.Multiline)]
    private static partial Regex ManifestLine();

    [GeneratedRegex(@"(?=^  - id: )", RegexOptions.Multiline)]
    private static partial Regex CaseStart();

    [GeneratedRegex(@"(?:- |\{ ?)id: (?<id>[A-Z0-9-]+)")]
    private static partial Regex RuleId();

    [GeneratedRegex(@"^(?:  (?<scale>[a-z][a-z0-9-]*):|\s{4,}- (?<band>[a-z][a-z0-9-]*):)", RegexOptions.Multiline)]
    private static partial Regex ScaleOrBand();
}
