using System.Collections.Immutable;
using System.Text;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>Collects the characters of a value together with their places in the file.</summary>
internal sealed class MappedTextBuilder(SourceText source)
{
    private readonly StringBuilder _text = new();
    private readonly ImmutableArray<int>.Builder _offsets = ImmutableArray.CreateBuilder<int>();

    public void Add(char c, int offset)
    {
        _text.Append(c);
        _offsets.Add(offset);
    }

    public void Add(string text, int offset)
    {
        foreach (var c in text) Add(c, offset);
    }

    /// <summary>A run of the file taken as it stands.</summary>
    public void AddRun(int start, int end)
    {
        for (var i = start; i < end; i++) Add(source.Content[i], i);
    }

    /// <summary>Line breaks at these places; each is one character of the value, however the file writes it.</summary>
    public void AddBreaks(List<int> offsets)
    {
        foreach (var offset in offsets) Add('\n', offset);
    }

    public MappedText Build(int end)
    {
        _offsets.Add(end);
        return new MappedText(source, _text.ToString(), _offsets.ToImmutable());
    }
}
