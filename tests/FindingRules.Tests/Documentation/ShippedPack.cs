using System.Collections.Immutable;
using System.Text;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Testing;

namespace FindingRules.Tests.Documentation;

/// <summary>The pack that README speaks of, read once.</summary>
internal static class ShippedPack
{
    private const string ExtraFile = "readme-example.yaml";

    public static string Folder { get; } = Repository.PathOf("rules", "msk-ultrasound");

    public static CompiledPack Pack { get; } = Compile(Files);

    private static ImmutableArray<PackFile> Files => PackFolder.Read(Folder).Files;

    /// <summary>The pack with one more file of rules that holds only this one.</summary>
    public static CompiledPack With(string scope, string rule, string id)
    {
        var text = $"""
            rules:
              - id: {id}
                for: {scope}
                rule: |
                  {rule.ReplaceLineEndings("\n      ").Trim()}
                because: An example of README.
                source: [{Pack.Pack.References.Keys.First()}]
            ...

            """;
        var files = Files.Select(f => f.Path == PackFolder.Manifest ? ListExtraFile(f) : f);
        return Compile([.. files, new PackFile(ExtraFile, Encoding.UTF8.GetBytes(text))]);
    }

    public static SourceText Study(string json) => new("study.json", json);

    public static string InWords(IEnumerable<Message> messages)
    {
        var text = new StringWriter { NewLine = "\n" };
        MessageText.Write(text, [.. messages], MessageStyle.Plain);
        return text.ToString();
    }

    private static PackFile ListExtraFile(PackFile manifest)
    {
        var text = Encoding.UTF8.GetString(manifest.Bytes.Span);
        var longer = text.Replace("\nfiles:\n", $"\nfiles:\n  - {{ rules: {ExtraFile}, entries: 1 }}\n", StringComparison.Ordinal);
        return manifest with { Bytes = Encoding.UTF8.GetBytes(longer) };
    }

    private static CompiledPack Compile(ImmutableArray<PackFile> files)
    {
        var load = CompiledPack.Load(files);
        return load.Pack ?? throw new InvalidOperationException(InWords(load.Messages));
    }
}
