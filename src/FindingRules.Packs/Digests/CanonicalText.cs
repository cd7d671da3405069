using System.Globalization;
using System.Text;

namespace FindingRules.Packs.Digests;

/// <summary>
/// Lines of parts, each part with its length before it, so that no two different contents give the same text.
/// </summary>
internal sealed class CanonicalText
{
    private readonly StringBuilder _text = new();

    public CanonicalText Add(string word, params IEnumerable<string?> parts)
    {
        _text.Append(word);
        foreach (var part in parts)
            if (part is null) _text.Append(" -");
            else _text.Append(CultureInfo.InvariantCulture, $" {part.Length}:{part}");
        _text.Append('\n');
        return this;
    }

    public override string ToString() => _text.ToString();
}
