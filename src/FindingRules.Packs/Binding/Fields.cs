using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding;

/// <summary>
/// The keys of one entry. Each mistake is said once and noted in <see cref="IsSound"/>; a key that is not there or not
/// right reads as null.
/// </summary>
internal sealed class Fields
{
    private readonly MappingNode _node;
    private readonly MessageBag _messages;

    private Fields(MappingNode node, string owner, MessageBag messages)
    {
        _node = node;
        Owner = owner;
        _messages = messages;
    }

    /// <summary>As messages name it: the rule `CUFF-010`.</summary>
    public string Owner { get; }

    public bool IsSound { get; private set; } = true;

    /// <param name="at">Where what is missing is reported: the entry's name.</param>
    public static Fields? Of(
        DocumentNode node, string owner, Location at, MessageBag messages, string[] required, params string[] optional)
    {
        if (node is not MappingNode mapping)
        {
            if (node is not BrokenNode) messages.Add(PackMessages.WrongForm(at, owner, node.Form, "keys with values"));
            return null;
        }
        var fields = new Fields(mapping, owner, messages);
        fields.CheckKeys(at, required, optional);
        return fields;
    }

    public void Report(Message message)
    {
        IsSound = false;
        _messages.Add(message);
    }

    /// <summary>What was wrong was said elsewhere.</summary>
    public void Spoil() => IsSound = false;

    public bool Has(string key) => _node.Find(key) is not null;

    public DocumentNode? Node(string key)
    {
        var node = _node.Find(key);
        if (node is not BrokenNode) return node;
        IsSound = false;
        return null;
    }

    /// <summary>A text that says something.</summary>
    public ScalarNode? Text(string key)
    {
        if (Node(key) is not { } node) return null;
        return AsText(node, $"`{key}` of {Owner}");
    }

    /// <summary>Words for a person, on one line.</summary>
    public string? Words(string key)
    {
        if (Text(key) is not { } text) return null;
        if (text.LooksOtherThanText)
            Report(PackMessages.WrongForm(text.Location, $"`{key}` of {Owner}", $"`{Shown.Briefly(text.Value)}`",
                "a text; put it in double quotes"));
        return OneLine(text.Value);
    }

    public bool? Flag(string key)
    {
        if (Node(key) is not { } node) return null;
        if (node is ScalarNode { AsTrueOrFalse: { } flag }) return flag;
        var found = node is ScalarNode word ? Shown.Briefly(word.Value) : node.Form;
        Report(PackMessages.NotTrueOrFalse(node.Location, $"`{key}` of {Owner}", found));
        return null;
    }

    public DateOnly? Date(string key)
    {
        if (Text(key) is not { } text) return null;
        if (DateOnly.TryParseExact(text.Value, "yyyy-MM-dd", out var date)) return date;
        Report(PackMessages.NotADate(text.Inside, $"`{key}` of {Owner}", Shown.Briefly(text.Value)));
        return null;
    }

    /// <summary>One of a closed list of words.</summary>
    public T? OneOf<T>(string key, params (string Word, T Value)[] words) where T : struct
    {
        if (Text(key) is not { } text) return null;
        foreach (var (word, value) in words)
            if (word == text.Value)
                return value;
        Report(PackMessages.NotOneOf(text.Inside, $"`{key}` of {Owner}", Shown.Briefly(text.Value), [.. words.Select(w => w.Word)]));
        return null;
    }

    /// <summary>A list of texts, each once; a mistake in one does not hide the others.</summary>
    public List<ScalarNode> Texts(string key, int least = 0)
    {
        var texts = new List<ScalarNode>();
        if (Items(key, least) is not { } items) return texts;
        var what = $"`{key}` of {Owner}";
        foreach (var item in items)
        {
            if (AsText(item, $"an entry of {what}") is not { } text) continue;
            var first = texts.Find(t => t.Value == text.Value);
            if (first is null) texts.Add(text);
            else Report(PackMessages.ListedTwice(text.Location, what, Shown.Briefly(text.Value), first.Location));
        }
        return texts;
    }

    public IReadOnlyList<DocumentNode>? Items(string key, int least = 0)
    {
        if (Node(key) is not { } node) return null;
        var what = $"`{key}` of {Owner}";
        if (node is not ListNode list)
        {
            Report(PackMessages.WrongForm(node.Opening, what, node.Form, "a list"));
            return null;
        }
        if (list.Items.Count < least) Report(PackMessages.TooFew(list.Location, what, list.Items.Count, least));
        return list.Items;
    }

    public MappingNode? Group(string key)
    {
        if (Node(key) is not { } node) return null;
        if (node is MappingNode mapping) return mapping;
        Report(PackMessages.WrongForm(node.Opening, $"`{key}` of {Owner}", node.Form, "keys with values"));
        return null;
    }

    public ScalarNode? AsText(DocumentNode node, string what)
    {
        if (node is BrokenNode) IsSound = false;
        else if (node is not ScalarNode text) Report(PackMessages.WrongForm(node.Opening, what, node.Form, "a text"));
        else if (text.IsNothing || string.IsNullOrWhiteSpace(text.Value)) Report(PackMessages.EmptyText(text.Location, what));
        else return text;
        return null;
    }

    /// <summary>A text as one line, whatever the file's own line breaks.</summary>
    public static string OneLine(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));

    private void CheckKeys(Location at, string[] required, string[] optional)
    {
        var missing = required.Where(key => _node.Find(key) is null).ToList();
        foreach (var (key, _) in _node.Entries)
        {
            if (required.Contains(key.Value) || optional.Contains(key.Value)) continue;
            string[] free = [.. required.Concat(optional).Where(k => _node.Find(k) is null)];
            Report(PackMessages.UnknownKey(key.Inside, Owner, Shown.Briefly(key.Value), free));
            // A misspelt key is one mistake, not also a missing one.
            if (Spelling.Closest(key.Value, free) is { } meant) missing.Remove(meant);
        }
        foreach (var key in missing) Report(PackMessages.MissingKey(at, Owner, key));
    }
}
