using System.Text;

namespace FindingRules.Testing.Broken;

/// <summary>Characters that hide what a file says, and bytes that say nothing.</summary>
internal static class PackCharacters
{
    private static readonly char[] Hidden =
    [
        '\u0000', '\u0007', '\u000B', '\u001B', '\u007F', '\u0085', '\u00AD', '\u200B', '\u200E', '\u200F', '\u202A', '\u202E', '\u2066', '\u2069', '\uFEFF',
    ];

    private static readonly (string Path, string After)[] Places =
    [
        ("rules.yaml", "rule: fluid "), ("rules.yaml", "because: A "), ("rules.yaml", "- id: CUFF"), ("topics.yaml", "says: \"Full"),
        ("vocabulary.yaml", "# yaml-"), ("pack.yaml", "title: "), ("cases.yaml", "about: Fluid "),
    ];

    public static IEnumerable<BrokenPack> Unseen() =>
        from place in Places
        from character in Hidden
        select BrokenPack.Of($"U+{(int)character:X4} after {place.After}", place.Path, Insert(place.Path, place.After, $"{character}"));

    public static IEnumerable<BrokenPack> NoText()
    {
        byte[][] sequences = [[0xFF], [0xC3, 0x28], [0xED, 0xA0, 0x80], [0xF5, 0x80, 0x80, 0x80], [0xC0, 0xAF], [0xE2, 0x82], [0x80]];
        foreach (var sequence in sequences)
            foreach (var place in Places)
            {
                var text = Insert(place.Path, place.After, "\u0001");
                var bytes = Encoding.UTF8.GetBytes(text);
                var at = Array.IndexOf(bytes, (byte)1);
                yield return BrokenPack.Of($"bytes {Convert.ToHexString(sequence)} after {place.After}", place.Path, [.. bytes[..at], .. sequence, .. bytes[(at + 1)..]]);
            }
        foreach (var (path, text) in BrokenPack.Texts)
        {
            yield return BrokenPack.Of("as UTF-16", path, [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(text)]);
            yield return BrokenPack.Of("as UTF-16, big end first", path, [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(text)]);
        }
        foreach (var (words, alike) in new[] { ("CUFF-010", "\u0421UFF-010"), ("each cuff", "e\u0430ch cuff"), ("fluid spans", "flu\u0456d spans"), ("trade", "tr\u0430de") })
            yield return new Replacement("rules.yaml", words, alike).Apply();
    }

    public static IEnumerable<BrokenPack> Noise()
    {
        var random = new Random(20260131);
        var paths = BrokenPack.Texts.Keys.ToArray();
        for (var i = 0; i < 60; i++)
        {
            var bytes = new byte[random.Next(1, 4000)];
            random.NextBytes(bytes);
            yield return BrokenPack.Of($"noise {i}", paths[i % paths.Length], bytes);
        }
        const string signs = "[]{}:,-?!&*|>'\"%@`#\n \t.0aA→";
        for (var i = 0; i < 120; i++)
        {
            var text = new string([.. Enumerable.Range(0, random.Next(1, 300)).Select(_ => signs[random.Next(signs.Length)])]);
            yield return BrokenPack.Of($"signs {i}", paths[i % paths.Length], text);
        }
    }

    private static string Insert(string path, string after, string what)
    {
        var text = BrokenPack.Texts[path];
        var at = text.IndexOf(after, StringComparison.Ordinal);
        if (at < 0) throw new InvalidOperationException($"{path} of the example pack does not say: {after}");
        return text.Insert(at + after.Length, what);
    }
}
