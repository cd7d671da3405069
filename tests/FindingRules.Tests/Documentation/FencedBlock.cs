using System.Collections.Immutable;
using System.Text.RegularExpressions;
using FindingRules.Testing;

namespace FindingRules.Tests.Documentation;

/// <summary>A block of the README between two fences.</summary>
/// <param name="Sort">The words after the opening fence: <c>yaml rules</c>.</param>
/// <param name="Line">Of the opening fence, counted from 1.</param>
/// <param name="Text">What stands between the fences, each line ended.</param>
internal sealed partial record FencedBlock(string Sort, int Line, string Text)
{
    public const string Path = "README.md";

    public static ImmutableArray<FencedBlock> All { get; } = Read(Repository.ReadText(Path).ReplaceLineEndings("\n"));

    /// <summary>The one block of this sort.</summary>
    public static FencedBlock The(string sort) => All.Single(b => b.Sort == sort);

    public override string ToString() => $"{Path}:{Line} {Sort}";

    private static ImmutableArray<FencedBlock> Read(string markdown) =>
    [
        .. Fences().Matches(markdown).Select(m => new FencedBlock(
            m.Groups["sort"].Value,
            markdown.AsSpan(0, m.Index).Count('\n') + 1,
            m.Groups["text"].Value)),
    ];

    [GeneratedRegex(@"^```(?<sort>[^\n]*)\n(?<text>.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fences();
}
