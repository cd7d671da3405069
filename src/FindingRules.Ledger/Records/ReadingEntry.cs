using FindingRules.Ledger.Correlation;

namespace FindingRules.Ledger.Records;

/// <summary>A study, and what was answered to it.</summary>
public sealed record ReadingEntry
{
    /// <summary>Its texts must be in the store already, so that the reading can be repeated.</summary>
    public required PackReference Pack { get; init; }

    public required string Engine { get; init; }

    public required string Actor { get; init; }

    /// <summary>The JSON as it was received.</summary>
    public required ReadOnlyMemory<byte> Study { get; init; }

    /// <summary>The JSON exactly as it is answered.</summary>
    public required ReadOnlyMemory<byte> Reading { get; init; }

    public IndexTerms Terms { get; init; } = IndexTerms.None;

    public TraceContext? Correlation { get; init; }

    /// <summary>Made by a pack that runs beside the one in force; never shown, and not counted with it.</summary>
    public bool IsShadow { get; init; }
}
