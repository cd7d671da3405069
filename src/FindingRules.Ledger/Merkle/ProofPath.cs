using System.Numerics;

namespace FindingRules.Ledger.Merkle;

/// <summary>Leaves from the first to before the last, whose hash stands in a proof.</summary>
internal readonly record struct LeafRange(ulong Start, ulong End)
{
    public ulong Count => End - Start;

    /// <summary>The largest power of two below the count. Source: RFC 9162, section 2.1.1.</summary>
    public ulong Middle => Start + (1UL << BitOperations.Log2(Count - 1));

    /// <summary>The complete subtrees that the range is made of, from left to right; each is half of the one before it or less.</summary>
    public IEnumerable<(int Level, ulong Place)> Subtrees()
    {
        var start = Start;
        while (start < End)
        {
            var level = BitOperations.Log2(End - start);
            yield return (level, start >> level);
            start += 1UL << level;
        }
    }
}

/// <summary>Which subtrees a proof consists of. Source: RFC 9162, sections 2.1.3.1 and 2.1.4.1.</summary>
internal static class ProofPath
{
    /// <summary>For the proof that leaf <paramref name="index"/> is in the tree of <paramref name="size"/> leaves.</summary>
    public static List<LeafRange> Inclusion(ulong index, ulong size)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, size);
        var path = new List<LeafRange>();
        var at = new LeafRange(0, size);
        while (at.Count > 1)
        {
            var (left, right) = (at with { End = at.Middle }, at with { Start = at.Middle });
            path.Add(index < at.Middle ? right : left);
            at = index < at.Middle ? left : right;
        }
        path.Reverse();
        return path;
    }

    /// <summary>For the proof that the tree of <paramref name="first"/> leaves is the beginning of that of <paramref
    /// name="second"/>.</summary>
    public static List<LeafRange> Consistency(ulong first, ulong second)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(first, second);
        var path = new List<LeafRange>();
        if (first == 0 || first == second) return path;
        var (at, isWhole) = (new LeafRange(0, second), true);
        while (at.End != first)
        {
            var (left, right) = (at with { End = at.Middle }, at with { Start = at.Middle });
            var isLeft = first <= at.Middle;
            path.Add(isLeft ? right : left);
            at = isLeft ? left : right;
            isWhole &= isLeft;
        }
        if (!isWhole) path.Add(at);
        path.Reverse();
        return path;
    }

    /// <summary>The hash of neighbouring subtrees, given from left to right, as one range.</summary>
    public static byte[] Combine(IReadOnlyList<byte[]> subtrees)
    {
        var hash = subtrees[^1];
        for (var i = subtrees.Count - 2; i >= 0; i--) hash = TreeHash.Node(subtrees[i], hash);
        return hash;
    }
}
