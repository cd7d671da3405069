namespace FindingRules.Ledger.Indexing;

/// <summary>What one step adds to the index, and the number of records that are indexed after it.</summary>
internal sealed record IndexRows
{
    public long Indexed { get; set; }

    public HashSet<Occurrence> Added { get; } = [];

    public HashSet<Occurrence> Removed { get; } = [];

    public Dictionary<TallyKey, long> Counts { get; } = [];

    public Dictionary<long, (long First, long Last)> Hours { get; } = [];

    /// <summary>The last verdict on each suggestion.</summary>
    public Dictionary<(long Reading, string Suggestion), StoredVerdict> Verdicts { get; } = [];

    public void Count(TallyKey key, long by) =>
        System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(Counts, key, out _) += by;

    public void Add(long word, long position)
    {
        var occurrence = new Occurrence(word, position);
        Removed.Remove(occurrence);
        Added.Add(occurrence);
    }

    public void Remove(long word, long position)
    {
        var occurrence = new Occurrence(word, position);
        Added.Remove(occurrence);
        Removed.Add(occurrence);
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
