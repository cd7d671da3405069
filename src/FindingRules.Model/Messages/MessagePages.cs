using System.Collections.Immutable;
using System.Reflection;

namespace FindingRules.Model.Messages;

/// <summary>The page behind each code, as Markdown, embedded in the assembly.</summary>
public static class MessagePages
{
    private const string Prefix = "Pages.";
    private static readonly Assembly Home = typeof(MessagePages).Assembly;

    public static ImmutableArray<string> Codes { get; } =
    [
        .. Home.GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .Select(n => n[Prefix.Length..^".md".Length])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The page, or null where there is no such code.</summary>
    public static string? Find(string code)
    {
        using var stream = Home.GetManifestResourceStream($"{Prefix}{code.ToUpperInvariant()}.md");
        if (stream is null) return null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
