using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Storage;

/// <summary>What one transaction adds: records that follow each other from the first position on, and the tree after them.</summary>
internal sealed record AppendedRows(long First, IReadOnlyList<NewRecord> Records, IReadOnlyList<KeptNode> Inner, Frontier Tree);
