namespace FindingRules.Testing;

/// <summary>
/// How many entries a file of a pack has, seen from its lines alone: a broken file has a number too. Entries are what
/// stands first below a key at the margin.
/// </summary>
public static class EntryCount
{
    public static int Of(string text)
    {
        var count = 0;
        int? indent = null;
        foreach (var line in text.ReplaceLineEndings("\n").Split('\n'))
        {
            var content = line.TrimStart(' ');
            if (content.Length == 0 || content[0] == '#' || content is "..." or "---") continue;
            var at = line.Length - content.Length;
            var isItem = content.StartsWith("- ", StringComparison.Ordinal);
            if (at == 0 && !isItem)
            {
                indent = null;
                continue;
            }
            indent ??= at;
            if (at == indent) count++;
        }
        return count;
    }
}
