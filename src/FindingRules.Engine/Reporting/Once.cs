using System.Collections.Immutable;

namespace FindingRules.Engine.Reporting;

/// <summary>Each thing once, in the order in which it first came.</summary>
internal sealed class Once<T>
    where T : notnull
{
    private const int FewEnoughToScan = 16;
    private readonly List<T> _items = [];
    private HashSet<T>? _known;

    public int Count => _items.Count;

    public T this[int index] => _items[index];

    public void Add(T item)
    {
        if (!IsKnown(item)) _items.Add(item);
    }

    public bool Contains(T item) => _items.Contains(item);

    public void AddAll(ImmutableArray<T> items)
    {
        foreach (var item in items) Add(item);
    }

    public ImmutableArray<T> ToImmutable() => [.. _items];

    public ImmutableArray<T> Sorted(Comparison<T> comparison)
    {
        _items.Sort(comparison);
        return [.. _items];
    }

    private bool IsKnown(T item)
    {
        if (_items.Count < FewEnoughToScan) return _items.Contains(item);
        _known ??= [.. _items];
        return !_known.Add(item);
    }
}
