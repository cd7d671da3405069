using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>Keys with values, in the order written. No key is there twice.</summary>
internal sealed class MappingNode : DocumentNode
{
    private const int FewEnoughToScan = 8;
    private readonly Dictionary<string, DocumentNode>? _byKey;

    public MappingNode(SourceText source, TextSpan span, IReadOnlyList<MappingEntry> entries) : base(source, span)
    {
        Entries = entries;
        foreach (var (key, value) in entries)
        {
            // A key has the pointer of its value: the pointer of a member says nothing of its name alone.
            key.AttachTo(this, key.Value);
            value.AttachTo(this, key.Value);
        }
        if (entries.Count > FewEnoughToScan)
            _byKey = entries.ToDictionary(e => e.Key.Value, e => e.Value, StringComparer.Ordinal);
    }

    public IReadOnlyList<MappingEntry> Entries { get; }

    public override string Form => "keys with values";

    public DocumentNode? Find(string key)
    {
        if (_byKey is not null) return _byKey.GetValueOrDefault(key);
        for (var i = 0; i < Entries.Count; i++)
            if (Entries[i].Key.Value == key)
                return Entries[i].Value;
        return null;
    }
}

internal readonly record struct MappingEntry(ScalarNode Key, DocumentNode Value);
