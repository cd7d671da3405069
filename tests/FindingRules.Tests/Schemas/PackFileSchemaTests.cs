using System.Text.RegularExpressions;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Schemas;

/// <summary>Every shipped file of a pack is what the schema of its kind says.</summary>
public sealed partial class PackFileSchemaTests
{
    public static TheoryData<string, string> ShippedFiles()
    {
        var data = new TheoryData<string, string>();
        foreach (var (path, kind) in Shipped()) data.Add(path, kind);
        return data;
    }

    [Theory]
    [MemberData(nameof(ShippedFiles))]
    public void A_shipped_file_is_valid(string path, string kind)
    {
        var document = YamlAsJson.Read(Repository.ReadText(path));

        Assert.Empty(SchemaFile.Of(kind).Errors(document));
    }

    [Fact]
    public void Every_kind_of_file_is_shipped_somewhere()
    {
        var kinds = Shipped().Select(f => f.Kind).Distinct().Order(StringComparer.Ordinal);

        Assert.Equal(["cases", "cautions", "measures", "next-steps", "pack", "protocols", "references", "rules", "scales", "topics", "vocabulary"], kinds);
    }

    [Fact]
    public void A_modeline_points_at_the_schema_of_its_file()
    {
        var wrong =
            from file in Shipped()
            let line = Modeline().Match(Repository.ReadText(file.Path))
            where line.Success
            let folder = Path.GetDirectoryName(Repository.PathOf(file.Path))!
            let target = Path.GetFullPath(Path.Combine(folder, line.Groups["path"].Value))
            where target != Repository.PathOf("schemas", $"{file.Kind}.schema.json")
            select $"{file.Path}: {line.Value}";

        Assert.Empty(wrong);
    }

    /// <summary>Every YAML file below rules and tests/packs, with the kind that its manifest gives it.</summary>
    private static IEnumerable<(string Path, string Kind)> Shipped()
    {
        foreach (var manifest in Manifests())
        {
            var folder = Path.GetDirectoryName(manifest)!;
            yield return (Repository.Relative(manifest), "pack");
            var files = YamlAsJson.Read(File.ReadAllText(manifest))!["files"]!.AsArray();
            foreach (var file in files)
            {
                var (kind, path) = file!.AsObject().Where(m => m.Key != "entries").Select(m => (m.Key, (string)m.Value!)).Single();
                yield return (Repository.Relative(Path.Combine(folder, path)), kind);
            }
        }
    }

    private static IEnumerable<string> Manifests() => new[] { "rules", Path.Combine("tests", "packs") }
        .Where(folder => Directory.Exists(Repository.PathOf(folder)))
        .SelectMany(folder => Repository.Files(folder, "pack.yaml"));

    [GeneratedRegex(@"^# yaml-language-server: \$schema=(?<path>\S+)\s*$", RegexOptions.Multiline)]
    private static partial Regex Modeline();
}
