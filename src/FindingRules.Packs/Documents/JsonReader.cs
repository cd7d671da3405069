using System.Text;
using System.Text.Json;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>JSON text in, document tree out, with JSON Pointers. The same limits and the same tree as for YAML.</summary>
internal ref struct JsonReader
{
    private readonly SourceText _source;
    private readonly int _depthLimit;
    private readonly MessageBag _messages;
    private readonly List<(ScalarNode Key, ScalarNode First)> _duplicates = [];
    private Utf8JsonReader _reader;
    private JsonPlaces _places;

    private JsonReader(SourceText source, ReadOnlySpan<byte> bytes, LoadLimits limits, MessageBag messages)
    {
        _source = source;
        _depthLimit = limits.DocumentDepth;
        _messages = messages;
        // Depth is checked here, with words; the reader's own limit is never met.
        _reader = new Utf8JsonReader(bytes, new JsonReaderOptions { MaxDepth = _depthLimit + 2 });
        _places = new JsonPlaces(source);
    }

    /// <summary>Null where the text is not JSON; then one message says why.</summary>
    public static DocumentNode? Read(SourceText source, LoadLimits limits, MessageBag messages)
    {
        var bytes = source.Utf8;
        if (bytes.Length > limits.StudyBytes)
        {
            messages.Add(ToolMessages.FileTooLarge(source.Path, bytes.Length, limits.StudyBytes));
            return null;
        }
        var reader = new JsonReader(source, bytes, limits, messages);
        try
        {
            reader._reader.Read();
            var root = reader.ReadNode();
            if (root is null) return null;
            reader._reader.Read();
            reader.ReportDuplicates();
            return root;
        }
        catch (JsonException failure)
        {
            messages.Add(JsonFailure.Explain(failure, source, bytes));
            return null;
        }
        catch (InvalidOperationException)
        {
            // A \u escape that is half of a character: the reader finds it only when the text is asked for.
            messages.Add(JsonFailure.HalfCharacter(reader.PlaceOfToken()));
            return null;
        }
    }

    // Null once a message stopped the reading.
    private DocumentNode? ReadNode() => _reader.TokenType switch
    {
        JsonTokenType.StartObject => Within() ? ReadMapping() : null,
        JsonTokenType.StartArray => Within() ? ReadList() : null,
        JsonTokenType.String =>
            new ScalarNode(_source, TokenSpan(), _reader.GetString()!, ScalarStyle.JsonText) { HasPointers = true },
        JsonTokenType.Number => Plain(Encoding.UTF8.GetString(_reader.ValueSpan), ScalarStyle.JsonNumber),
        JsonTokenType.Null => Plain("null", ScalarStyle.JsonNull),
        JsonTokenType.True => Plain("true", ScalarStyle.JsonTrueOrFalse),
        _ => Plain("false", ScalarStyle.JsonTrueOrFalse),
    };

    private ScalarNode Plain(string value, ScalarStyle style) => new(_source, TokenSpan(), value, style) { HasPointers = true };

    private bool Within()
    {
        if (_reader.CurrentDepth < _depthLimit) return true;
        _messages.Add(StudyMessages.TooDeep(PlaceOfToken(), _depthLimit));
        return false;
    }

    private MappingNode? ReadMapping()
    {
        var start = TokenSpan().Start;
        var entries = new List<MappingEntry>();
        Dictionary<string, ScalarNode>? firsts = null;
        List<(ScalarNode Key, ScalarNode First)>? twice = null;
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndObject)
        {
            var key = new ScalarNode(_source, TokenSpan(), _reader.GetString()!, ScalarStyle.JsonText) { HasPointers = true };
            _reader.Read();
            if (ReadNode() is not { } value) return null;
            var first = FirstOf(key, entries, ref firsts);
            if (first is null) entries.Add(new MappingEntry(key, value));
            else (twice ??= []).Add((key, first));
        }
        var mapping = new MappingNode(_source, TextSpan.Between(start, TokenSpan().End), entries) { HasPointers = true };
        foreach (var (key, _) in twice ?? []) key.AttachTo(mapping, key.Value);
        if (twice is not null) _duplicates.AddRange(twice);
        return mapping;
    }

    // Only now is every object in its place, and every pointer whole.
    private readonly void ReportDuplicates()
    {
        foreach (var (key, first) in _duplicates)
            _messages.Add(StudyMessages.DuplicateMember(key.Location, Shown.Briefly(key.Value), first.Location));
    }

    private static ScalarNode? FirstOf(ScalarNode key, List<MappingEntry> entries, ref Dictionary<string, ScalarNode>? firsts)
    {
        if (entries.Count > 16 && firsts is null) firsts = entries.ToDictionary(e => e.Key.Value, e => e.Key, StringComparer.Ordinal);
        if (firsts is not null) return firsts.TryAdd(key.Value, key) ? null : firsts[key.Value];
        foreach (var entry in entries)
            if (entry.Key.Value == key.Value)
                return entry.Key;
        return null;
    }

    private ListNode? ReadList()
    {
        var start = TokenSpan().Start;
        var items = new List<DocumentNode>();
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
        {
            if (ReadNode() is not { } item) return null;
            items.Add(item);
        }
        return new ListNode(_source, TextSpan.Between(start, TokenSpan().End), items) { HasPointers = true };
    }

    private TextSpan TokenSpan()
    {
        var start = _places.OffsetOf((int)_reader.TokenStartIndex);
        // Behind a member's name the reader has gone on past the colon.
        var end = _reader.TokenType is JsonTokenType.PropertyName or JsonTokenType.String
            ? _reader.TokenStartIndex + _reader.ValueSpan.Length + 2
            : _reader.BytesConsumed;
        return TextSpan.Between(start, _places.OffsetOf((int)end));
    }

    private Location PlaceOfToken() => new(_source, TokenSpan(), "");
}
