using System.Collections.Immutable;

namespace FindingRules.Model.Messages;

/// <summary>Collects messages while a pack or a study is read; every stage adds, none throws.</summary>
public sealed class MessageBag
{
    private readonly List<Message> _messages = [];

    public bool HasErrors { get; private set; }

    public int Count => _messages.Count;

    public void Add(Message message)
    {
        _messages.Add(message);
        HasErrors |= message.Severity == Severity.Error;
    }

    public void AddRange(IEnumerable<Message> messages)
    {
        foreach (var message in messages) Add(message);
    }

    /// <summary>By file, place and code, each once.</summary>
    public ImmutableArray<Message> Sorted() =>
    [
        .. _messages
            .DistinctBy(m => (m.Code, m.Location.Source.Path, m.Location.Span, m.Text))
            .OrderBy(m => m.Location.Source.Path, StringComparer.Ordinal)
            .ThenBy(m => m.Location.Span.Start)
            .ThenBy(m => m.Number)
            .ThenBy(m => m.Text, StringComparer.Ordinal),
    ];
}
