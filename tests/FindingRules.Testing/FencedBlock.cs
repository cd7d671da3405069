using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace FindingRules.Testing;

/// <summary>A block of the README between two fences.</summary>
/// <param name="Sort">The words after the opening fence: <c>yaml rules</c>.</param>
/// <param name="Line">Of the opening fence, counted from 1.</param>
/// <param name="Text">What stands between the fences, each line ended.</param>
public sealed partial record FencedBlock(string Sort, int Line, string Text)
{
    public const string Path = "README.md";

    public static ImmutableArray<FencedBlock> All { get; } = Read(Repository.ReadText(Path).ReplaceLineEndings("\n"));

    /// <summary>The one block of this sort.</summary>
    public static FencedBlock The(string sort) => All.Single(b => b.Sort == sort);

    /// <summary>Fails where the block says something else, save for lines that it leaves out at <c>[…]</c>.</summary>
    public void MatchInPieces(string actual)
    {
        var rest = actual.ReplaceLineEndings("\n");
        foreach (var piece in Text.Split("[…]\n"))
        {
            var at = rest.IndexOf(piece, StringComparison.Ordinal);
            if (at < 0) throw new SnapshotException($"{this} shows lines that do not come:\n{piece}\nWhat comes is:\n{actual}");
            rest = rest[(at + piece.Length)..];
        }
        if (rest.Length > 0) throw new SnapshotException($"{this} leaves out the last lines:\n{rest}");
    }

    /// <summary>Fails where the block says something else; <c>ACCEPT_SNAPSHOTS=1</c> writes what came into the README.</summary>
    public void Match(string actual)
    {
        var text = actual.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
        if (text == Text) return;
        if (Environment.GetEnvironmentVariable("ACCEPT_SNAPSHOTS") != "1")
            throw new SnapshotException($"{this} differs; ACCEPT_SNAPSHOTS=1 accepts what came:\n{text}");
        var fence = $"```{Sort}\n";
        var readme = Repository.ReadText(Path);
        File.WriteAllText(Repository.PathOf(Path), readme.Replace($"{fence}{Text}```", $"{fence}{text}```", StringComparison.Ordinal));
    }

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
