using System.Text.RegularExpressions;
using Xunit;

namespace FindingRules.Architecture.Tests.Code;

public sealed partial class NamingTests
{
    private static readonly string[] HomelessFolders = ["Utils", "Helpers", "Common", "Managers", "Misc"];

    [Fact]
    public void A_namespace_is_its_folder() =>
        Expect.None(SourceFiles.All
            .Select(f => (f.Path, Found: Namespace().Match(f.Text), Expected: Folder(f.Path)))
            .Where(f => f.Found.Success ? f.Found.Groups[1].Value != f.Expected : !f.Path.EndsWith("/Program.cs", StringComparison.Ordinal))
            .Select(f => $"{f.Path}: {f.Found.Groups[1].Value}, not {f.Expected}"));

    [Fact]
    public void A_file_is_named_for_a_type_in_it() =>
        Expect.None(SourceFiles.All
            .Where(f => !f.Path.EndsWith("/Program.cs", StringComparison.Ordinal) && !f.Text.Contains("[assembly:", StringComparison.Ordinal))
            .Where(f => !Regex.IsMatch(f.Text, $@"\b(class|record|struct|enum|interface)\b[^\n]*\b{Path.GetFileName(f.Path).Split('.')[0]}\b"))
            .Select(f => f.Path));

    [Fact]
    public void Every_folder_is_named_for_an_idea() =>
        Expect.None(SourceFiles.All.Select(f => f.Path).Where(p => p.Split('/').Any(HomelessFolders.Contains)));

    private static string Folder(string path) => Path.GetDirectoryName(path)!.Replace('\\', '/').Split('/', 2)[1].Replace('/', '.');

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();
}
