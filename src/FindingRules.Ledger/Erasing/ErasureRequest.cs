using System.Collections.Immutable;

namespace FindingRules.Ledger.Erasing;

/// <summary>Which bodies are to be erased: those older than a moment, or those of records that are named.</summary>
public sealed record ErasureRequest
{
    /// <summary>A code: nothing takes it out of the ledger again.</summary>
    public required string Actor { get; init; }

    /// <summary>A code, such as <c>retention</c>.</summary>
    public required string Reason { get; init; }

    /// <summary>Whether a word may stand for ever: so many small letters, digits and hyphens.</summary>
    public static bool IsCode(string word) =>
        word.Length is > 0 and <= 64 && word.All(c => c is '-' || char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c));

    /// <summary>Readings, shadows and feedback recorded before this moment.</summary>
    public DateTimeOffset? Before { get; init; }

    /// <summary>Records by id, whatever their age.</summary>
    public ImmutableArray<Guid> Records { get; init; } = [];
}

/// <param name="Erased">How many records lost their bodies, feedback on erased readings among them.</param>
/// <param name="Records">The records that say so.</param>
public sealed record ErasureResult(long Erased, ImmutableArray<Guid> Records)
{
    /// <summary>How many were to be erased and were passed over, for nobody can tell what they are.</summary>
    public int Unreadable { get; init; }

    /// <summary>Whether the erased bytes are gone from the files too; otherwise they go when whoever reads them lets go.</summary>
    public bool AreBytesGone { get; init; } = true;
}
