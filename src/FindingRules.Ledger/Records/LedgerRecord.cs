using FindingRules.Ledger.Correlation;

namespace FindingRules.Ledger.Records;

/// <summary>A record as the ledger keeps it.</summary>
public sealed record LedgerRecord
{
    public required Guid Id { get; init; }

    /// <summary>Its place among the leaves of the tree, counted from zero.</summary>
    public required long Index { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required RecordKind Kind { get; init; }

    public PackReference? Pack { get; init; }

    /// <summary>Version of the engine that read the study.</summary>
    public string? Engine { get; init; }

    public required string Actor { get; init; }

    public TraceContext? Correlation { get; init; }

    /// <summary>The record that this one speaks of: the reading that feedback was given on.</summary>
    public Guid? About { get; init; }

    /// <summary>The canonical bytes whose hash is the leaf of the tree.</summary>
    public required ReadOnlyMemory<byte> Header { get; init; }

    /// <summary>Null where it was erased.</summary>
    public RecordBody? Body { get; init; }

    public bool IsErased => Body is null;
}
