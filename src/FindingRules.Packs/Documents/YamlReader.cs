using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace FindingRules.Packs.Documents;

/// <summary>
/// YAML text in, document tree out. Reads events and not objects: the events carry exact places, and whatever could
/// blow up (depth, aliases) is refused before it is built.
/// </summary>
internal sealed class YamlReader
{
    private readonly SourceText _source;
    private readonly LoadLimits _limits;
    private readonly MessageBag _messages;
    private readonly Parser _parser;
    private int _depth;

    private YamlReader(SourceText source, string content, LoadLimits limits, MessageBag messages)
    {
        _source = source;
        _limits = limits;
        _messages = messages;
        _parser = new Parser(new StringReader(content));
    }

    /// <summary>Null where the file could not be followed to its end; then at least one message says why.</summary>
    public static DocumentNode? Read(SourceText source, LoadLimits limits, MessageBag messages)
    {
        var before = messages.Count;
        var clean = CharacterCheck.Report(source, messages);
        var reader = new YamlReader(source, clean, limits, messages);
        try
        {
            return reader.ReadStream();
        }
        catch (TooDeepException)
        {
            return null;
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // A refused character may be why the rest does not fit: it is said alone.
            if (messages.Count == before || clean == source.Content)
                messages.Add(YamlFailure.Explain(failure, source, reader.LastEnd()));
            return null;
        }
    }

    private DocumentNode? ReadStream()
    {
        Next<StreamStart>();
        _parser.MoveNext();
        if (_parser.Current is not DocumentStart start)
        {
            _messages.Add(YamlMessages.EmptyFile(_source.Whole));
            return null;
        }
        if (start.Version is not null || start.Tags is { Count: > 0 } && !start.IsImplicit && _source.Content.Contains('%'))
            ReportDirective(start);
        _parser.MoveNext();
        var root = ReadNode();
        ReadEnd();
        if (root is ScalarNode { IsNothing: true })
        {
            _messages.Add(YamlMessages.EmptyFile(_source.Whole));
            return null;
        }
        return root;
    }

    private void ReportDirective(DocumentStart start)
    {
        var at = _source.Content.IndexOf('%', StringComparison.Ordinal);
        if (at >= 0 && at <= start.Start.Index) _messages.Add(YamlMessages.Directive(At(at, at + 1)));
    }

    private void ReadEnd()
    {
        var end = Next<DocumentEnd>();
        _parser.MoveNext();
        if (_parser.Current is DocumentStart second) _messages.Add(YamlMessages.SecondDocument(PlaceOf(second)));
        else if (end.IsImplicit) _messages.Add(YamlMessages.NoDocumentEnd(At(_source.Content.Length, _source.Content.Length)));
    }

    private DocumentNode ReadNode()
    {
        switch (_parser.Current)
        {
            case Scalar scalar:
                return ReadScalar(scalar);
            case AnchorAlias alias:
                var place = PlaceOf(alias);
                _messages.Add(YamlMessages.AnchorOrAlias(place, Shown.Briefly(place.Words)));
                return new BrokenNode(_source, place.Span);
            case MappingStart mapping:
                Enter(mapping);
                return ReadMapping(mapping);
            case SequenceStart list:
                Enter(list);
                return ReadList(list);
            default:
                throw new InvalidOperationException();
        }
    }

    private ScalarNode ReadScalar(Scalar scalar)
    {
        RefuseDecoration(scalar);
        var style = scalar.Style switch
        {
            YamlDotNet.Core.ScalarStyle.SingleQuoted => ScalarStyle.SingleQuoted,
            YamlDotNet.Core.ScalarStyle.DoubleQuoted => ScalarStyle.DoubleQuoted,
            YamlDotNet.Core.ScalarStyle.Literal => ScalarStyle.Literal,
            YamlDotNet.Core.ScalarStyle.Folded => ScalarStyle.Folded,
            _ => ScalarStyle.Plain,
        };
        var node = new ScalarNode(_source, PlaceOf(scalar).Span, scalar.Value, style);
        if (style == ScalarStyle.DoubleQuoted) CharacterCheck.ReportEscaped(node, _messages);
        return node;
    }

    private MappingNode ReadMapping(MappingStart start)
    {
        var entries = new List<MappingEntry>();
        var firsts = new Dictionary<string, ScalarNode>(StringComparer.Ordinal);
        while (MoveWithin<MappingEnd>())
        {
            var key = ReadNode();
            RefuseQuestionMark(key);
            _parser.MoveNext();
            var value = ReadNode();
            if (key is not ScalarNode { IsNothing: false } word)
            {
                if (key is not BrokenNode) _messages.Add(YamlMessages.KeyNotText(key.Opening));
            }
            else if (!firsts.TryAdd(word.Value, word))
            {
                _messages.Add(YamlMessages.DuplicateKey(word.Location, Shown.Briefly(word.Value), firsts[word.Value].Location));
            }
            else
            {
                entries.Add(new MappingEntry(word, value));
            }
        }
        return new MappingNode(_source, Leave(start), entries);
    }

    // YAML allows `? key` and `: value` on lines of their own; the events do not tell.
    private void RefuseQuestionMark(DocumentNode key)
    {
        var at = key.Span.Start - 1;
        while (at >= 0 && _source.Content[at] == ' ') at--;
        if (at >= 0 && at < key.Span.Start - 1 && _source.Content[at] == '?') _messages.Add(YamlMessages.QuestionMark(At(at, at + 1)));
    }

    private ListNode ReadList(SequenceStart start)
    {
        var items = new List<DocumentNode>();
        while (MoveWithin<SequenceEnd>()) items.Add(ReadNode());
        return new ListNode(_source, Leave(start), items);
    }

    private bool MoveWithin<TEnd>()
    {
        _parser.MoveNext();
        return _parser.Current is not TEnd;
    }

    private void Enter(NodeEvent start)
    {
        RefuseDecoration(start);
        if (++_depth <= _limits.DocumentDepth) return;
        _messages.Add(YamlMessages.TooDeep(PlaceOf(start), _limits.DocumentDepth));
        throw new TooDeepException();
    }

    private TextSpan Leave(NodeEvent start)
    {
        _depth--;
        return TextSpan.Between((int)start.Start.Index, (int)_parser.Current!.End.Index);
    }

    private void RefuseDecoration(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
            _messages.Add(YamlMessages.AnchorOrAlias(PlaceOf(node), $"&{Shown.Briefly(node.Anchor.Value)}"));
        if (!node.Tag.IsEmpty)
            _messages.Add(YamlMessages.Tag(PlaceOf(node), Shown.Briefly(node.Tag.IsNonSpecific ? "!" : node.Tag.Value)));
    }

    private TEvent Next<TEvent>() where TEvent : ParsingEvent
    {
        _parser.MoveNext();
        return (TEvent)_parser.Current!;
    }

    private int LastEnd() => (int)(_parser.Current?.End.Index ?? 0);

    private Location PlaceOf(ParsingEvent found) => At((int)found.Start.Index, (int)found.End.Index);

    private Location At(int start, int end)
    {
        var from = Math.Clamp(start, 0, _source.Content.Length);
        return new Location(_source, TextSpan.Between(from, Math.Clamp(end, from, _source.Content.Length)));
    }

    private sealed class TooDeepException : Exception;
}
