using System.Collections.Immutable;
using System.Xml.Linq;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Architecture.Tests.Projects;

/// <summary>The table of projects: a new reference or package is a change here, in the same commit.</summary>
public sealed class ReferenceTests
{
    private static readonly ImmutableSortedDictionary<string, (string[] Projects, string[] Packages)> Products =
        new Dictionary<string, (string[], string[])>
        {
            ["FindingRules.Model"] = ([], []),
            ["FindingRules.Language"] = (["FindingRules.Model"], ["Sprache"]),
            ["FindingRules.Packs"] = (["FindingRules.Language", "FindingRules.Model"], ["YamlDotNet"]),
            ["FindingRules.Engine"] = (["FindingRules.Model"], []),
            ["FindingRules"] = (["FindingRules.Engine", "FindingRules.Model", "FindingRules.Packs"], []),
            ["FindingRules.Ledger"] = (["FindingRules.Model"], ["Microsoft.Data.Sqlite", "Npgsql"]),
            ["FindingRules.Service"] = (["FindingRules", "FindingRules.Ledger"], ["Swashbuckle.AspNetCore"]),
            ["FindingRules.Cli"] = (["FindingRules", "FindingRules.Ledger", "FindingRules.Service"], ["System.CommandLine"]),
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    private static readonly ImmutableSortedSet<string> TestPackages =
    [
        "BenchmarkDotNet", "CsCheck", "JsonSchema.Net", "Microsoft.AspNetCore.Mvc.Testing", "Microsoft.NET.Test.Sdk",
        "NRules", "RulesEngine",
        "xunit", "xunit.extensibility.core", "xunit.runner.visualstudio",
    ];

    public static TheoryData<string> ProductNames => [.. Products.Keys];

    [Fact]
    public void The_table_names_every_product() =>
        Assert.Equal(Products.Keys, Repository.Files("src", "*.csproj").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(ProductNames))]
    public void A_product_references_what_the_table_says(string project) =>
        Assert.Equal(Products[project].Projects, Items(ProjectFile(project), "ProjectReference"));

    [Theory]
    [MemberData(nameof(ProductNames))]
    public void A_product_uses_the_packages_the_table_says(string project) =>
        Assert.Equal(Products[project].Packages, Items(ProjectFile(project), "PackageReference"));

    [Fact]
    public void Tests_use_the_packages_that_are_named_here() =>
        Expect.None(Repository.Files("tests", "*.csproj").SelectMany(f => Items(f, "PackageReference")).Except(TestPackages));

    [Fact]
    public void Every_project_is_in_the_solution_and_locked()
    {
        var solution = Repository.ReadText("FindingRules.sln");
        foreach (var project in Repository.Files("src", "*.csproj").Concat(Repository.Files("tests", "*.csproj")))
        {
            Assert.Contains(Repository.Relative(project).Replace('/', '\\'), solution, StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(Path.GetDirectoryName(project)!, "packages.lock.json")), $"{project} is not locked");
        }
    }

    [Fact]
    public void Versions_are_stated_once() =>
        Expect.None(Repository.Files("src", "*.csproj").Concat(Repository.Files("tests", "*.csproj"))
            .Where(f => XDocument.Load(f).Descendants("PackageReference").Any(p => p.Attribute("Version") is not null))
            .Select(Repository.Relative));

    [Theory]
    [InlineData("Sprache", "FindingRules.Language")]
    [InlineData("YamlDotNet", "FindingRules.Packs")]
    [InlineData("Microsoft.Data.Sqlite", "FindingRules.Ledger")]
    [InlineData("Npgsql", "FindingRules.Ledger")]
    public void A_library_is_known_to_one_product(string library, string home)
    {
        var known = Products.Keys.Where(p => SourceFiles.Of(p).Any(f => f.Text.Contains(library, StringComparison.Ordinal)));
        Assert.Equal([home], known);
    }

    private static string ProjectFile(string project) => Repository.PathOf("src", project, $"{project}.csproj");

    private static IEnumerable<string> Items(string projectFile, string item) => XDocument.Load(projectFile)
        .Descendants(item).Select(e => Path.GetFileName(e.Attribute("Include")!.Value).Replace(".csproj", "", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
