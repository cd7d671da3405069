namespace FindingRules.Drill;

/// <summary>
/// Numbers from a seed, the same on every machine and for ever, which the library's own generator does not promise. The
/// scheme is SplitMix64 (Steele, Lea and Flood, 2014; from memory).
/// </summary>
internal sealed class SeededOrder(ulong seed)
{
    private ulong _state = seed;

    /// <summary>A seed of its own for each question, so that its options do not depend on what was asked before.</summary>
    public static SeededOrder For(ulong seed, string key)
    {
        var hash = 14_695_981_039_346_656_037UL;
        foreach (var c in key) hash = (hash ^ c) * 1_099_511_628_211UL;
        return new SeededOrder(seed ^ hash);
    }

    public List<T> Shuffle<T>(IEnumerable<T> items)
    {
        var list = items.ToList();
        for (var i = list.Count - 1; i > 0; i--)
        {
            var j = (int)(Next() % (ulong)(i + 1));
            (list[i], list[j]) = (list[j], list[i]);
        }
        return list;
    }

    private ulong Next()
    {
        _state += 0x9E37_79B9_7F4A_7C15;
        var z = _state;
        z = (z ^ (z >> 30)) * 0xBF58_476D_1CE4_E5B9;
        z = (z ^ (z >> 27)) * 0x94D0_49BB_1331_11EB;
        return z ^ (z >> 31);
    }
}
