using System.Text.RegularExpressions;

namespace FindingRules.Testing.Broken;

/// <summary>Lines that stand twice or not at all, as after a merge gone wrong.</summary>
internal static partial class PackLines
{
    public static IEnumerable<BrokenPack> Doubled() =>
        from place in Lines()
        where Mapping().IsMatch(place.Line) && !place.Line.Contains("- structure:", StringComparison.Ordinal)
        select place.With("doubled", $"{place.Line}\n{place.Line}");

    public static IEnumerable<BrokenPack> Lost() =>
        from place in Lines()
        where Required().IsMatch(place.Line)
        select place.With("lost", null);

    private static IEnumerable<PlacedLine> Lines() =>
        from file in BrokenPack.Texts
        let lines = file.Value.Split('\n')
        from number in Enumerable.Range(0, lines.Length)
        select new PlacedLine(file.Key, lines, number);

    [GeneratedRegex(@"^ *(?:- )?(?:\{ )?[A-Za-z][A-Za-z0-9-]*:")]
    private static partial Regex Mapping();

    [GeneratedRegex(@"^ *(?:- )?(?:id|for|rule|because|cites|status|of|values|kind|pack|version|language|approval|files|findings|kinds|structures|study|axes|bands|requires|calm|about|expect|structure):")]
    private static partial Regex Required();

    private sealed record PlacedLine(string Path, string[] Lines, int Number)
    {
        public string Line => Lines[Number];

        public BrokenPack With(string what, string? line)
        {
            string[] lines = line is null ? [.. Lines[..Number], .. Lines[(Number + 1)..]] : [.. Lines[..Number], line, .. Lines[(Number + 1)..]];
            return BrokenPack.Of($"line {Number + 1} {what}: {Line.Trim()}", Path, string.Join('\n', lines));
        }
    }
}
