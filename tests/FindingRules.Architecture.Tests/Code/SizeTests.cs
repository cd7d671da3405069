using System.Collections.Immutable;
using Xunit;

namespace FindingRules.Architecture.Tests.Code;

public sealed class SizeTests
{
    private const int MostLinesOfFile = 400;
    private const int MostMedianLines = 80;
    private const int MostLinesOfMember = 60;
    private const int MostColumns = 140;

    [Fact]
    public void A_file_is_read_in_one_sitting() =>
        Expect.None(SourceFiles.All.Where(f => f.Lines.Length > MostLinesOfFile).Select(f => $"{f.Path}: {f.Lines.Length} lines"));

    [Fact]
    public void Most_files_are_short()
    {
        var lengths = SourceFiles.Products.Select(f => f.Lines.Length).Order().ToArray();
        Assert.NotEmpty(lengths);
        Assert.True(lengths[lengths.Length / 2] <= MostMedianLines, $"the median is {lengths[lengths.Length / 2]} lines");
    }

    [Fact]
    public void A_line_fits_the_page() =>
        Expect.None(SourceFiles.Products.SelectMany(f => f.Lines
            .Select((line, i) => (line.Length, Place: $"{f.Path}:{i + 1}"))
            .Where(l => l.Length > MostColumns).Select(l => $"{l.Place}: {l.Length} columns")));

    [Fact]
    public void A_member_fits_the_screen() =>
        Expect.None(SourceFiles.Products.SelectMany(f => LongMembers(f.Path, f.Lines)));

    [Fact]
    public void A_long_member_is_found()
    {
        ImmutableArray<string> lines = ["class C", "{", "    void M()", "    {", .. Enumerable.Repeat("        x();", 60), "    }", "}"];
        Assert.Equal(["C.cs:3: 63 lines"], LongMembers("C.cs", lines));
    }

    // Members begin at the first indent of a type; the layout is kept by dotnet format.
    private static IEnumerable<string> LongMembers(string path, ImmutableArray<string> lines)
    {
        var start = -1;
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            if (line.Length < 5 || !line.StartsWith("    ", StringComparison.Ordinal) || line[4] == ' ') continue;
            if (char.IsLetter(line[4])) start = line.Contains(" class ", StringComparison.Ordinal) ? -1 : i;
            if (line[4] is '}' or ']' && start >= 0 && i - start + 1 > MostLinesOfMember) yield return $"{path}:{start + 1}: {i - start + 1} lines";
        }
    }
}
