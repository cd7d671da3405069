using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

/// <summary>Reads a sentence with places to fill in: <c>Tear of the {subject}{, tear-length}.</c></summary>
internal sealed class WordingReader
{
    private readonly MappedText _text;
    private readonly WordingSources _sources;
    private readonly MessageBag _messages;
    private readonly ImmutableArray<WordingPart>.Builder _parts = ImmutableArray.CreateBuilder<WordingPart>();

    private WordingReader(MappedText text, WordingSources sources, MessageBag messages)
    {
        _text = text;
        _sources = sources;
        _messages = messages;
    }

    public static Wording? Read(Fields fields, string key, WordingSources sources, BindingContext context)
    {
        if (fields.Text(key) is not { } scalar) return null;
        var reader = new WordingReader(scalar.Text, sources, context.Messages);
        if (reader.ReadParts()) return new Wording(scalar.Value, reader._parts.ToImmutable(), scalar.Location);
        fields.Spoil();
        return null;
    }

    private bool ReadParts()
    {
        var text = _text.Text;
        var isSound = true;
        for (var at = 0; at < text.Length;)
        {
            var brace = text.AsSpan(at).IndexOfAny('{', '}');
            AddText(text[at..(brace < 0 ? text.Length : at + brace)]);
            if (brace < 0) break;
            var open = at + brace;
            var close = text[open] == '}' ? -1 : text.AsSpan(open + 1).IndexOfAny('{', '}');
            if (close < 0 || text[open + 1 + close] == '{')
            {
                _messages.Add(PackMessages.BrokenPlace(
                    _text.At(new TextSpan(open, 1)), text[open] == '}' ? "`}` closes nothing" : "`{` is not closed"));
                return false;
            }
            at = open + close + 2;
            isSound &= ReadPlace(new TextSpan(open + 1, close));
        }
        return isSound;
    }

    private void AddText(string words)
    {
        if (words.Length > 0) _parts.Add(new WordingText(words));
    }

    private bool ReadPlace(TextSpan inside)
    {
        var written = _text.Text.Substring(inside.Start, inside.Length);
        var names = Names(written);
        if (names.Count != 1)
        {
            var at = _text.At(new TextSpan(inside.Start - 1, inside.Length + 2));
            _messages.Add(PackMessages.PlaceWithoutName(at, Shown.Briefly($"{{{written}}}"), names.Count));
            return false;
        }
        var (start, length) = names[0];
        var place = _text.At(new TextSpan(inside.Start + start, length));
        if (_sources.Find(written.Substring(start, length), place, _messages) is not { } source) return false;
        _parts.Add(new WordingPlace(written[..start], source, written[(start + length)..]));
        return true;
    }

    // What is not part of a name is text around it: ", " and "(" stand or vanish with what is filled in.
    private static List<(int Start, int Length)> Names(string text)
    {
        var names = new List<(int, int)>();
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsLetterOrDigit(text[i])) continue;
            var start = i;
            while (i < text.Length && IsOfName(text, i)) i++;
            names.Add((start, i - start));
        }
        return names;
    }

    private static bool IsOfName(string text, int i) =>
        char.IsLetterOrDigit(text[i]) || (text[i] == '-' && i + 1 < text.Length && char.IsLetterOrDigit(text[i + 1]));
}
