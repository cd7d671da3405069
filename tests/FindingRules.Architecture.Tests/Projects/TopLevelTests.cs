using FindingRules.Testing;
using Xunit;

namespace FindingRules.Architecture.Tests.Projects;

public sealed class TopLevelTests
{
    private static readonly HashSet<string> Allowed =
    [
        "src", "tests", "rules", "schemas", "README.md", "DEVELOPERS.md", "Dockerfile", "FindingRules.sln",
        "Directory.Build.props", "Directory.Build.targets", "Directory.Packages.props",
    ];

    private static readonly HashSet<string> LeftByTools = ["bin", "obj", "artifacts", "TestResults"];

    [Fact]
    public void The_top_level_holds_what_a_newcomer_looks_for_and_nothing_else()
    {
        var names = Directory.EnumerateFileSystemEntries(Repository.Root).Select(p => Path.GetFileName(p)!)
            .Where(n => n[0] != '.' && !LeftByTools.Contains(n)).ToArray();
        Expect.None(names.Except(Allowed));
        Expect.None(Allowed.Except(names));
    }

    [Fact]
    public void Line_ends_are_pinned() =>
        Assert.StartsWith("* text=auto eol=lf", Repository.ReadText(".gitattributes"), StringComparison.Ordinal);
}
