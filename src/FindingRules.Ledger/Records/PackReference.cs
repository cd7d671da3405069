namespace FindingRules.Ledger.Records;

/// <summary>The pack that a record speaks of.</summary>
/// <param name="MeaningDigest">Covers what can change an answer.</param>
/// <param name="TextDigest">Covers the files as they lay in the folder; under it the store keeps them.</param>
public sealed record PackReference(string Name, string Version, string MeaningDigest, string TextDigest);
