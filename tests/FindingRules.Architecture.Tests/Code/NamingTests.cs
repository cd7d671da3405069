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
            .Where(f => !Declares(f.Text, Path.GetFileName(f.Path).Split('.')[0]))
            .Select(f => f.Path));

    [Fact]
    public void Every_folder_is_named_for_an_idea() =>
        Expect.None(SourceFiles.All.Select(f => f.Path).Where(p => p.Split('/').Any(HomelessFolders.Contains)));

    // A small family of types may share a file that is named for the family: LogicNodes holds what ends in Node.
    private static bool Declares(string text, string name) =>
        Regex.IsMatch(text, $@"\b(?:class|record|struct|enum|interface)\b[^\n]*\b{name}\b")
        || (LastWord().Match(name) is { Success: true } family
            && Regex.IsMatch(text, $@"\b(?:class|record|struct|enum|interface)\b[^\n(]*\b\w*{family.Groups[1].Value}\b"));

    private static string Folder(string path) => Path.GetDirectoryName(path)!.Replace('\\', '/').Split('/', 2)[1].Replace('/', '.');

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    [GeneratedRegex("([A-Z][a-z]+)s$")]
    private static partial Regex LastWord();
}
