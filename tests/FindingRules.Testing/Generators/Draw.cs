using CsCheck;

namespace FindingRules.Testing.Generators;

/// <summary>The random choices that make one sample. A sample of fewer choices is a smaller one.</summary>
public sealed class Draw(PCG source)
{
    public ulong Count { get; private set; }

    public int Below(int limit)
    {
        Count++;
        return limit <= 1 ? 0 : (int)source.Next((uint)limit);
    }

    public int Between(int low, int high) => low + Below(high - low + 1);

    public bool Chance(int percent) => Below(100) < percent;

    public T Of<T>(params IReadOnlyList<T> items) => items[Below(items.Count)];

    /// <summary>Each with the given chance, in the order given.</summary>
    public List<T> Some<T>(IEnumerable<T> items, int percent) => [.. items.Where(_ => Chance(percent))];

    /// <summary>Of items with weights.</summary>
    public T Weighted<T>(params IReadOnlyList<(int Weight, T Item)> items)
    {
        var left = Below(items.Sum(i => i.Weight));
        foreach (var (weight, item) in items)
            if ((left -= weight) < 0)
                return item;
        return items[^1].Item;
    }

    public List<T> Shuffle<T>(IEnumerable<T> items)
    {
        var list = items.ToList();
        for (var i = list.Count - 1; i > 0; i--)
        {
            var j = Below(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }
        return list;
    }
}

/// <summary>A generator written as a plain method: runs again from its seed, and shrinks by the number of choices.</summary>
public sealed class Drawn<T>(Func<Draw, T> make) : Gen<T>
{
    public override T Generate(PCG pcg, Size? min, out Size size)
    {
        var draw = new Draw(pcg);
        var made = make(draw);
        size = new Size(draw.Count);
        return made;
    }
}
