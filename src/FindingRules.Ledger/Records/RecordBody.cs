namespace FindingRules.Ledger.Records;

/// <summary>The part of a record that can be erased; read from the store, it is the one that its header commits to.</summary>
/// <param name="Content">Of a reading the study, in canonical JSON; of any other record what it says.</param>
/// <param name="Answer">Of a reading the bytes that were answered; otherwise empty.</param>
public sealed record RecordBody(ReadOnlyMemory<byte> Content, ReadOnlyMemory<byte> Answer, IndexTerms Terms)
{
    /// <summary>The random bytes of the commitment: with them anybody can compute it again.</summary>
    public required ReadOnlyMemory<byte> Salt { get; init; }

    /// <summary><see cref="Terms"/> as they were hashed.</summary>
    public required ReadOnlyMemory<byte> TermsJson { get; init; }
}
