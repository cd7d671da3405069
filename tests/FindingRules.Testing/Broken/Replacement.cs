using System.Text.RegularExpressions;

namespace FindingRules.Testing.Broken;

/// <summary>The first place in a file of the example pack where some words stand, and other words there.</summary>
internal sealed record Replacement(string Path, string Words, string Instead)
{
    public BrokenPack Apply()
    {
        var text = BrokenPack.Texts[Path];
        var at = text.IndexOf(Words, StringComparison.Ordinal);
        if (at < 0) throw new InvalidOperationException($"{Path} of the example pack does not say: {Words}");
        var shown = Instead.Length <= 60 ? Instead : $"{Instead[..60]}… ({Instead.Length})";
        return BrokenPack.Of($"`{Words}` became `{Regex.Escape(shown)}`", Path, text[..at] + Instead + text[(at + Words.Length)..]);
    }
}
