using System.Collections.Immutable;
using System.Text;
using FindingRules.Model.Packs;

namespace FindingRules.Testing.Broken;

/// <summary>The files of a pack with one thing wrong.</summary>
/// <param name="Name">What was done to it, as a failing test shows it.</param>
public sealed record BrokenPack(string Name, ImmutableArray<PackFile> Files)
{
    /// <summary>The example pack with another text in place of one file.</summary>
    internal static BrokenPack Of(string name, string path, string text) => Of(name, path, Encoding.UTF8.GetBytes(text));

    internal static BrokenPack Of(string name, string path, byte[] bytes) =>
        new($"{path}: {name}", [.. ExamplePack.Plain.Files.Where(f => f.Path != path), new PackFile(path, bytes)]);

    /// <summary>The texts of the example pack, by path.</summary>
    internal static ImmutableSortedDictionary<string, string> Texts { get; } = ExamplePack.Plain.Files
        .ToImmutableSortedDictionary(f => f.Path, f => Encoding.UTF8.GetString(f.Bytes.Span), StringComparer.Ordinal);

    public override string ToString() => Name;
}
