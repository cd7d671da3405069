namespace FindingRules.Ledger.Records;

/// <summary>What a record of the ledger is.</summary>
public enum RecordKind
{
    /// <summary>A study and the reading that was answered.</summary>
    Reading = 1,

    /// <summary>A study and a reading that was made beside the answered one and never shown.</summary>
    Shadow = 2,

    /// <summary>What became of the suggestions of a reading.</summary>
    Feedback = 3,

    /// <summary>Which records lost their bodies, and why.</summary>
    Erasure = 4,

    /// <summary>A rule that must no longer be rested on.</summary>
    Withdrawal = 5,
}
