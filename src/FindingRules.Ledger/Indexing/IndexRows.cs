namespace FindingRules.Ledger.Indexing;

/// <summary>What one step adds to the index, and the number of records that are indexed after it.</summary>
internal sealed record IndexRows
{
    public long Indexed { get; set; }

    /// <summary>May hold one more than once.</summary>
    public List<Occurrence> Words { get; } = [];

    /// <summary>Words of feedback, which come and go: true for those that a reading has now.</summary>
    public Dictionary<Occurrence, bool> Changes { get; } = [];

    /// <summary>What is to be added, in the order of the store's key, so that each page is met once.</summary>
    public Occurrence[] Added => [.. Words.Concat(Changes.Where(c => c.Value).Select(c => c.Key)).Distinct().Order()];

    public IEnumerable<Occurrence> Removed => Changes.Where(c => !c.Value).Select(c => c.Key);

    public Dictionary<TallyKey, long> Counts { get; } = [];

    public Dictionary<long, (long First, long Last)> Hours { get; } = [];

    /// <summary>The last verdict on each suggestion.</summary>
    public Dictionary<(long Reading, string Suggestion), StoredVerdict> Verdicts { get; } = [];

    public void Count(TallyKey key, long by) =>
        System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(Counts, key, out _) += by;


    public void Reach(long hour, long position) =>
        Hours[hour] = Hours.TryGetValue(hour, out var reach)
            ? (Math.Min(reach.First, position), Math.Max(reach.Last, position))
            : (position, position);
}

internal readonly record struct Occurrence(long Word, long Position) : IComparable<Occurrence>
{
    public int CompareTo(Occurrence other) => Word != other.Word ? Word.CompareTo(other.Word) : Position.CompareTo(other.Position);
}

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
