using System.Collections.Immutable;
using FindingRules.Model.Messages;

namespace FindingRules.Ledger.Records;

/// <summary>What came of a record that was to be appended.</summary>
public abstract record AppendResult
{
    private AppendResult()
    {
    }

    /// <summary>It is durable, as a new record.</summary>
    public sealed record Appended(Guid Id, long Index, DateTimeOffset Time) : AppendResult;

    /// <summary>The same request was recorded before; that record is the answer.</summary>
    public sealed record Repeated(LedgerRecord First) : AppendResult;

    /// <summary>The key was used before, for another request. Nothing was recorded.</summary>
    public sealed record KeyTaken(Guid First) : AppendResult;

    /// <summary>It says something that cannot be recorded.</summary>
    public sealed record Refused(ImmutableArray<Message> Messages) : AppendResult;
}
