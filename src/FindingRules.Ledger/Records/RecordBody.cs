namespace FindingRules.Ledger.Records;

/// <summary>The part of a record that can be erased.</summary>
/// <param name="Content">Of a reading the study, in canonical JSON; of any other record what it says.</param>
/// <param name="Answer">Of a reading the bytes that were answered; otherwise empty.</param>
public sealed record RecordBody(ReadOnlyMemory<byte> Content, ReadOnlyMemory<byte> Answer, IndexTerms Terms);
