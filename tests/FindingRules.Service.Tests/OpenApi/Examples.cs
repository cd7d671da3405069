using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.OpenApi;

/// <summary>The worked examples of the description, as files, and what the service answers, made comparable with them.</summary>
internal static partial class Examples
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly string Folder = Repository.PathOf("src", "FindingRules.Service", "OpenApi", "Examples");

    public static IEnumerable<string> Names => Directory.EnumerateFiles(Folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal);

    public static string Read(string name) => File.ReadAllText(Path.Combine(Folder, name));

    /// <summary>The file says what the service says; <c>ACCEPT_SNAPSHOTS=1</c> writes it anew.</summary>
    public static void Match(string name, string answer)
    {
        var path = Path.Combine(Folder, name);
        var received = Path.GetExtension(name) switch
        {
            ".json" => WithoutChance(JsonNode.Parse(answer)!.ToJsonString(Layout) + "\n"),
            ".ndjson" => WithoutChance(answer),
            _ => answer,
        };
        if (Environment.GetEnvironmentVariable("ACCEPT_SNAPSHOTS") == "1") File.WriteAllText(path, received, new UTF8Encoding(false));
        Assert.True(File.Exists(path), $"{name} is not there; ACCEPT_SNAPSHOTS=1 writes what came:\n{received}");
        Assert.Equal(File.ReadAllText(path), received);
    }

    private static string WithoutChance(string json)
    {
        var tidy = Time().Replace(json, "$1\"2026-01-31T09:00:00+00:00\"");
        tidy = RecordId().Replace(tidy, "01890a5d-ac96-774b-bcce-b302099a8057");
        tidy = RecordTime().Replace(tidy, "2026-01-31T09:00:00Z");
        tidy = RecordMonth().Replace(tidy, "\"2026-01\"");
        tidy = Signature().Replace(tidy, "${1}\"MEUCIQDEXAMPLE\"");
        tidy = RequestName().Replace(tidy, "$1\"0HNEXAMPLE01:00000001\"");
        tidy = Question().Replace(tidy, $"d1-{Numbered(12)}-{Numbered(12)}-3-0123");
        tidy = Digest().Replace(tidy, Numbered(64));
        tidy = Revision().Replace(tidy, Numbered(12));
        return Size().Replace(tidy, "${1}1024");
    }

    // What depends on every byte of the invented pack would change the examples with each word of it.
    private static string Numbered(int digits) => string.Concat(Enumerable.Range(0, digits).Select(i => $"{i % 16:x}"));

    [GeneratedRegex("(\"(?:takenAt|replacedAt|at)\": )\"[^\"]+\"")]
    private static partial Regex Time();

    [GeneratedRegex("d1-[0-9a-f]{12}-[0-9a-f]{12}-3-[0-9a-f]{4}")]
    private static partial Regex Question();

    [GeneratedRegex("\\b[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[0-9a-f]{4}-[0-9a-f]{12}\\b")]
    private static partial Regex RecordId();

    // In records times have no name before them that stands in an example of a study.
    [GeneratedRegex("\\b20[0-9]{2}-[0-9]{2}-[0-9]{2}T[0-9:.]+(?:Z|\\+00:00)(?<!2026-01-31T09:00:00\\+00:00)")]
    private static partial Regex RecordTime();

    [GeneratedRegex("\"20[0-9]{2}-[0-9]{2}\"")]
    private static partial Regex RecordMonth();

    [GeneratedRegex("(\"signature\": ?)\"[^\"]+\"")]
    private static partial Regex Signature();

    [GeneratedRegex("\\b[0-9a-f]{64}\\b")]
    private static partial Regex Digest();

    // After a hyphen it is a part of an id.
    [GeneratedRegex("(?<!-)\\b[0-9a-f]{12}\\b")]
    private static partial Regex Revision();

    [GeneratedRegex("(\"bytes\": )\\d+")]
    private static partial Regex Size();

    [GeneratedRegex("(\"request\": )\"[^\"]+\"")]
    private static partial Regex RequestName();
}
