using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Packs;
using FindingRules.Testing;

namespace FindingRules.Tests.Schemas;

/// <summary>The studies of packs' cases and the example studies beside a pack, as JSON.</summary>
internal static class ExampleStudies
{
    public static IEnumerable<string> PackFolders { get; } =
    [
        .. new[] { "rules", "tests/packs" }
            .Where(folder => Directory.Exists(Repository.PathOf(folder)))
            .SelectMany(folder => Repository.Files(folder, "pack.yaml"))
            .Select(manifest => Repository.Relative(Path.GetDirectoryName(manifest)!)),
    ];

    private static readonly ConcurrentDictionary<string, Lazy<CompiledPack>> Packs = new(StringComparer.Ordinal);

    public static CompiledPack Load(string folder) => Packs.GetOrAdd(folder, f => new(() => Compile(f))).Value;

    /// <summary>Each with what it is called.</summary>
    public static IEnumerable<(string Name, JsonObject Study)> Of(string folder)
    {
        var manifest = YamlAsJson.Read(Repository.ReadText(folder, "pack.yaml"))!;
        foreach (var file in manifest["files"]!.AsArray().Select(f => (string?)f!["cases"]).OfType<string>())
            foreach (var found in YamlAsJson.Read(Repository.ReadText(folder, file))!["cases"]!.AsArray())
                yield return ((string)found!["id"]!, Whole(found["study"]!.AsObject(), (string)found["id"]!));
        foreach (var path in Repository.Files(folder, "*.json"))
            yield return (Repository.Relative(path), JsonNode.Parse(File.ReadAllText(path))!.AsObject());
    }

    /// <summary>The study, or null where it is refused.</summary>
    public static Study? Read(JsonNode study, Pack pack)
    {
        var messages = new MessageBag();
        return StudyReader.Read(new SourceText("study.json", study.ToJsonString()), pack, LoadLimits.Default, messages);
    }

    private static CompiledPack Compile(string folder) => PackFolder.Load(Repository.PathOf(folder)).Pack
        ?? throw new InvalidOperationException($"The pack in {folder} has errors.");

    private static JsonObject Whole(JsonObject study, string id)
    {
        var whole = study.DeepClone().AsObject();
        whole.TryAdd("study", id);
        return whole;
    }
}
