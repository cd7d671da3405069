namespace FindingRules.Ledger.Indexing;

/// <summary>What one step adds to the index.</summary>
internal sealed record IndexRows
{
    /// <summary>The first record of the step.</summary>
    public long From { get; init; }

    /// <summary>The number of records that are indexed after it.</summary>
    public long Indexed { get; init; }

    /// <summary>Of each row of the index, the places that are new, in order.</summary>
    public Dictionary<PostingKey, List<ushort>> Words { get; } = [];

    /// <summary>Words of feedback, which come and go: true for those that a reading has now.</summary>
    public Dictionary<Occurrence, bool> Changes { get; } = [];

    public Dictionary<TallyKey, long> Counts { get; } = [];

    public Dictionary<long, (long First, long Last)> Hours { get; } = [];

    /// <summary>The last verdict on each suggestion.</summary>
    public Dictionary<(long Reading, string Suggestion), StoredVerdict> Verdicts { get; } = [];

    public void Count(TallyKey key, long by) =>
        System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(Counts, key, out _) += by;

    /// <summary>Records come in their order.</summary>
    public void Add(long word, long position)
    {
        ref var places = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(
            Words, new PostingKey(word, Places.ChunkOf(position)), out _);
        places ??= [];
        var place = (ushort)Places.PlaceOf(position);
        if (places.Count == 0 || places[^1] != place) places.Add(place);
    }

    public void Reach(long hour, long position) =>
        Hours[hour] = Hours.TryGetValue(hour, out var reach)
            ? (Math.Min(reach.First, position), Math.Max(reach.Last, position))
            : (position, position);
}

internal readonly record struct Occurrence(long Word, long Position);

/// <summary>What is counted of a rule: in readings of a pack's version in a month.</summary>
/// <param name="Detail">Of what is missing the finding, of what was overridden the reason; otherwise empty.</param>
internal sealed record TallyKey(string Rule, string Pack, string Version, string Month, TallyOf What, string Detail);

internal enum TallyOf
{
    Fired = 1,
    Shown = 2,
    Unknown = 3,
    Borderline = 4,

    /// <summary>It fired or was borderline: what the borderline share is a share of.</summary>
    Considered = 5,
    Missing = 6,
    Accepted = 7,
    Overridden = 8,
}

/// <param name="Rules">Ids of the rules that the suggestion came from.</param>
/// <param name="Reason">Of an overridden suggestion; null for an accepted one.</param>
internal sealed record StoredVerdict(string[] Rules, string? Reason);
