using System.Text.RegularExpressions;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Architecture.Tests.Projects;

/// <summary>What the files of the checkout may not speak of: the machine they were written on, and work left undone.</summary>
public sealed partial class RepositoryTextTests
{
    private static readonly string[] Suffixes =
    [
        ".cs", ".md", ".yaml", ".yml", ".json", ".csproj", ".props", ".targets", ".sln", ".txt", ".http", ".sql", ".sh",
        ".editorconfig", ".gitignore", ".gitattributes", ".dockerignore", "Dockerfile", "run",
    ];

    // Hosts that name a standard, a vocabulary or a publication, or that by design lead nowhere.
    private static readonly HashSet<string> Hosts =
    [
        "localhost", "127.0.0.1", "0.0.0.0", "192.0.2.1", "+", "json-schema.org", "snomed.info", "loinc.org", "hl7.org", "ucum.org",
        "unitsofmeasure.org", "www.rfc-editor.org", "yaml.org", "doi.org", "spec.openapis.org", "creativecommons.org",
        "schemas.microsoft.com", "www.w3.org",
    ];

    private static readonly (string Path, string Text)[] Texts =
    [
        .. Directory.EnumerateFiles(Repository.Root)
            .Concat(new[] { "src", "tests", "rules", "schemas", ".ci" }
                .Where(folder => Directory.Exists(Repository.PathOf(folder)))
                .SelectMany(folder => Repository.Files(folder, "*")))
            .Where(path => Suffixes.Any(s => path.EndsWith(s, StringComparison.Ordinal)) && !path.Contains(".received.", StringComparison.Ordinal))
            .Select(path => (Repository.Relative(path), File.ReadAllText(path))),
    ];

    [Fact]
    public void There_are_files_to_look_at() => Assert.True(Texts.Length > 100, $"{Texts.Length} files");

    [Fact]
    public void No_file_names_a_place_on_somebodys_machine() => AssertNowhere(MachinePath());

    [Fact]
    public void No_file_speaks_of_how_it_came_to_be() => AssertNowhere(HowItCameToBe());

    [Fact]
    public void No_work_is_left_undone() => AssertNowhere(Undone());

    [Fact]
    public void Addresses_lead_to_publications_only()
    {
        var hosts = Texts.SelectMany(t => Address().Matches(t.Text).Select(m => (Host: m.Groups[1].Value, t.Path)));
        Expect.None(hosts.Where(h => !Hosts.Contains(h.Host) && !ForExamples().IsMatch(h.Host)).Distinct());
    }

    private static void AssertNowhere(Regex pattern) =>
        Expect.None(Texts.SelectMany(t => pattern.Matches(t.Text).Select(m => $"{t.Path}: {m.Value}")));

    // The character classes keep the patterns from finding themselves.
    [GeneratedRegex(@"(?<![\w.}])/(?:wor[k]|hom[e]|tm[p]|roo[t]|User[s]|va[r]/folders)(?![\w-])|\b[C]:\\")]
    private static partial Regex MachinePath();

    [GeneratedRegex(@"\b(?:transcrip[t]s?|seed documen[t]|worktre[e]|language mode[l]|this sessio[n]|pas[t] sessions?|packageSource[s])\b", RegexOptions.IgnoreCase)]
    private static partial Regex HowItCameToBe();

    [GeneratedRegex(@"\bTOD[O]\b|\bFIXM[E]\b|\bNotImplemente[d]|\bthrow new NotSupporte[d]|\[[^\]]*Ski[p] = ")]
    private static partial Regex Undone();

    [GeneratedRegex(@"(?:^|\.)(?:example|example\.org|example\.com|invalid|test)$")]
    private static partial Regex ForExamples();

    [GeneratedRegex(@"https?://([^/\s""'`)>:\]}\\]+)")]
    private static partial Regex Address();
}
