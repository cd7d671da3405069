using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>The shipped pack, loaded once, and studies written as JSON read against it.</summary>
internal static class Shipped
{
    public const string Folder = "rules/msk-ultrasound";

    /// <summary>A defect from bursa to joint that stays on re-angling.</summary>
    public const string Through = """ "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists" """;

    /// <summary>A bursal defect, re-angled, in two planes.</summary>
    public const string Bursal = """ "fluid": "bursal", "reangled": "persists", "planes": "two" """;

    private static readonly Lazy<PackLoad> Loading = new(LoadPack);

    public static PackLoad Load => Loading.Value;

    public static CompiledPack Compiled =>
        Load.Pack ?? throw new InvalidOperationException(string.Join('\n', Load.Messages.Select(m => $"{m.Location} {m.Code} {m.Text}")));

    public static Pack Pack => Compiled.Pack;

    /// <summary>One subject on the right, or without a side where the structure is not paired.</summary>
    public static Reading Read(string structure, string findings, string facts = "") =>
        ReadSubjects(facts, Subject(structure, "right", findings));

    public static Reading ReadFacts(string facts) => ReadSubjects(facts);

    public static Reading ReadSubjects(string facts, params string[] subjects) =>
        ReadStudy($$"""{ "study": "T-1", "facts": { {{facts}} }, "subjects": [{{string.Join(',', subjects)}}] }""");

    public static Reading ReadStudy(string json)
    {
        var answer = Compiled.Read(new SourceText("study.json", json));
        Assert.True(answer.Reading is not null, string.Join('\n', answer.Messages.Select(m => $"{m.Code} {m.Text}")));
        return answer.Reading;
    }

    public static string Subject(string structure, string side, string findings) =>
        $$"""{ "structure": "{{structure}}", "side": "{{side}}", "findings": { {{findings}} } }""";

    public static string Normal(string structure, string side) =>
        $$"""{ "structure": "{{structure}}", "side": "{{side}}", "normal": true }""";

    /// <summary>The value of a topic in the impression, or null where it was not said.</summary>
    public static string? ValueOf(this Reading reading, string topic) =>
        reading.Suggestions.SingleOrDefault(s => s.Topic == topic)?.Value;

    public static string TextOf(this Reading reading, string topic) => reading.Suggestions.Single(s => s.Topic == topic).Text;

    public static bool Warns(this Reading reading, string caution) => reading.Cautions.Any(c => c.Caution == caution);

    public static bool Offers(this Reading reading, string step) => reading.NextSteps.Any(s => s.Step == step && !s.IsDone);

    public static bool Holds(this Reading reading, string topic) => reading.Held.Any(h => h.Topic == topic);

    private static PackLoad LoadPack()
    {
        var root = Repository.PathOf(Folder);
        ImmutableArray<PackFile> files =
        [
            .. Repository.Files(Folder, "*.yaml")
                .Select(path => new PackFile(Path.GetRelativePath(root, path).Replace('\\', '/'), File.ReadAllBytes(path))),
        ];
        return CompiledPack.Load(files);
    }
}
