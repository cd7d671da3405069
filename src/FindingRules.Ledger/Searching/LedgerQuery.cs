using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Searching;

/// <summary>Which records are looked for. All that is said must hold; the newest come first.</summary>
public sealed record LedgerQuery
{
    public RecordKind Kind { get; init; } = RecordKind.Reading;

    /// <summary>A rule's id; what became of it is <see cref="Outcome"/>.</summary>
    public string? Rule { get; init; }

    /// <summary>Left out: that it fired, unless what is asked is what it missed or how it was judged.</summary>
    public RuleOutcomes? Outcome { get; init; }

    /// <summary>The revision of <see cref="Rule"/>.</summary>
    public string? Revision { get; init; }

    /// <summary>A finding for want of which <see cref="Rule"/>, or any rule, was unknown.</summary>
    public string? Missing { get; init; }

    /// <summary>A pack's name.</summary>
    public string? Pack { get; init; }

    /// <summary>The version of <see cref="Pack"/>.</summary>
    public string? PackVersion { get; init; }

    /// <summary>The digest of a pack, of its texts or of its meaning.</summary>
    public string? PackDigest { get; init; }

    public string? Topic { get; init; }

    /// <summary>A value of <see cref="Topic"/>.</summary>
    public string? Value { get; init; }

    public string? Subject { get; init; }

    /// <summary>The key of a study.</summary>
    public string? Study { get; init; }

    /// <summary>The key of a study that is replaced.</summary>
    public string? Supersedes { get; init; }

    /// <summary>Readings of which a suggestion was accepted, or was overridden; of <see cref="Rule"/>, where a rule is said.</summary>
    public bool? IsAccepted { get; init; }

    /// <summary>The reason for which a suggestion was overridden.</summary>
    public string? Reason { get; init; }

    /// <summary>The record that the ones looked for speak of.</summary>
    public Guid? About { get; init; }

    /// <summary>The first moment.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>The moment after the last.</summary>
    public DateTimeOffset? To { get; init; }

    /// <summary>At most so many to a page, from 1 to 1000.</summary>
    public int Limit { get; init; } = 50;

    /// <summary>Where the page before ended.</summary>
    public string? Cursor { get; init; }

    // Feedback makes a reading found long after it was recorded, which cannot be seen in the reading itself.
    internal bool NeedsIndex => IsAccepted is not null || Reason is not null;
}
