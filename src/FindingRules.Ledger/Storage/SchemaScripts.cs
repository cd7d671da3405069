using System.Text.RegularExpressions;

namespace FindingRules.Ledger.Storage;

/// <summary>The numbered SQL scripts that bring a store from one form to the next; never back.</summary>
internal static partial class SchemaScripts
{
    /// <summary>The scripts of a store, such as <c>sqlite</c>; the first is number 1.</summary>
    public static IReadOnlyList<string> Of(string store)
    {
        var assembly = typeof(SchemaScripts).Assembly;
        return [.. assembly.GetManifestResourceNames().Select(n => ScriptName().Match(n))
            .Where(m => m.Success && m.Groups[1].Value == store)
            .OrderBy(m => m.Groups[2].Value, StringComparer.Ordinal)
            .Select(m => Read(assembly.GetManifestResourceStream(m.Value)!))];
    }

    private static string Read(Stream resource)
    {
        using var reader = new StreamReader(resource);
        return reader.ReadToEnd();
    }

    [GeneratedRegex(@"^Schema\.([a-z]+)-(\d{3})\.sql$")]
    private static partial Regex ScriptName();
}
