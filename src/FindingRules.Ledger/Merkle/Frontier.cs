namespace FindingRules.Ledger.Merkle;

/// <summary>
/// What must be known of a tree to append to it: the hashes of its largest complete subtrees, from left to right, one for
/// each bit of its size.
/// </summary>
internal sealed class Frontier
{
    private readonly List<byte[]> _hashes;

    /// <param name="hashes">As <see cref="ToBytes"/> wrote them.</param>
    /// <exception cref="InvalidDataException">There are not as many hashes as a tree of that size has.</exception>
    public Frontier(long size, ReadOnlySpan<byte> hashes)
    {
        if (size < 0 || hashes.Length != long.PopCount(size) * TreeHash.Size)
            throw new InvalidDataException($"A tree of {size} leaves has no frontier of {hashes.Length} bytes.");
        Size = size;
        _hashes = new List<byte[]>(64);
        for (var at = 0; at < hashes.Length; at += TreeHash.Size) _hashes.Add(hashes.Slice(at, TreeHash.Size).ToArray());
    }

    public Frontier()
        : this(0, [])
    {
    }

    public long Size { get; private set; }

    /// <summary>Appends a leaf, and gives the subtrees that it completes at the levels that are kept.</summary>
    public void Append(byte[] leaf, ICollection<KeptNode> completed)
    {
        var (hash, level) = (leaf, 0);
        for (var place = Size; (place & 1) == 1; place >>= 1)
        {
            hash = TreeHash.Node(_hashes[^1], hash);
            _hashes.RemoveAt(_hashes.Count - 1);
            level++;
            if (level % KeptNode.LevelStep == 0) completed.Add(new KeptNode(level, place >> 1, hash));
        }
        _hashes.Add(hash);
        Size++;
    }

    public byte[] Root()
    {
        if (_hashes.Count == 0) return TreeHash.Empty.ToArray();
        var root = _hashes[^1];
        for (var i = _hashes.Count - 2; i >= 0; i--) root = TreeHash.Node(_hashes[i], root);
        return root;
    }

    public byte[] ToBytes() => [.. _hashes.SelectMany(h => h)];
}

/// <summary>
/// The hash of a complete subtree that the store keeps. Only every eighth level is kept: one hash for 256 below it. What
/// lies between is computed from at most 128 neighbours when a proof asks for it.
/// </summary>
internal readonly record struct KeptNode(int Level, long Place, byte[] Hash)
{
    public const int LevelStep = 8;
}
