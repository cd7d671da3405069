using System.Collections.Immutable;
using FindingRules.Testing;

namespace FindingRules.Architecture.Tests;

/// <summary>The C# files of the checkout, as text.</summary>
internal sealed record SourceFiles(string Path, string Text, ImmutableArray<string> Lines)
{
    public static ImmutableArray<SourceFiles> Products { get; } = [.. Repository.Files("src", "*.cs").Select(Read)];

    public static ImmutableArray<SourceFiles> Tests { get; } = [.. Repository.Files("tests", "*.cs").Select(Read)];

    public static IEnumerable<SourceFiles> All => Products.Concat(Tests);

    public static IEnumerable<SourceFiles> Of(string project) =>
        Products.Where(f => f.Path.StartsWith($"src/{project}/", StringComparison.Ordinal));

    private static SourceFiles Read(string path)
    {
        var text = File.ReadAllText(path);
        return new SourceFiles(Repository.Relative(path), text, [.. text.TrimEnd('\n').Split('\n')]);
    }
}
