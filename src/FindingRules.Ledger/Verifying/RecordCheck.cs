using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Records;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Verifying;

/// <summary>Checks records one after the other, and gathers what can only be judged at the end: erasures and packs.</summary>
internal sealed class RecordCheck(Findings findings)
{
    private static readonly byte[] Unknown = new byte[TreeHash.Size];

    /// <summary>Positions of records that may be erased and have no body.</summary>
    public List<PositionRange> WithoutBody { get; } = [];

    /// <summary>What erasure records say was erased, and which record says so.</summary>
    public List<(PositionRange Range, long By)> Erased { get; } = [];

    /// <summary>The packs that readings rest on, and the first that does.</summary>
    public Dictionary<string, long> Packs { get; } = new(StringComparer.Ordinal);

    /// <summary>Checks a record and returns its leaf.</summary>
    public byte[] Check(StoredRow row)
    {
        if (row.Header is null)
        {
            findings.Add(LedgerAuditMessages.NotReadable(findings.Ledger, row.Position));
            return Unknown;
        }
        var leaf = TreeHash.Leaf(row.Header);
        if (row.Leaf is null || !row.Leaf.AsSpan().SequenceEqual(leaf)) findings.Add(
            LedgerAuditMessages.HeaderChanged(findings.Ledger, row.Position));
        else if (Read(row) is { } header) Check(row, header);
        return leaf;
    }

    private RecordHeader? Read(StoredRow row)
    {
        try
        {
            var header = HeaderReader.Read(row.Header);
            if (header.ToBytes().AsSpan().SequenceEqual(row.Header)) return header;
        }
        catch (InvalidDataException)
        {
            // Told below, with the case that it reads but was not written so.
        }
        findings.Add(LedgerAuditMessages.NotReadable(findings.Ledger, row.Position));
        return null;
    }

    private void Check(StoredRow row, RecordHeader header)
    {
        var isListedSo = row.Id is not null && header.Id.ToByteArray(bigEndian: true).AsSpan().SequenceEqual(row.Id)
            && $"{row.Kind}" == $"{(int)header.Kind}" && $"{row.Time}" == $"{header.Time.ToUnixTimeMilliseconds()}";
        if (!isListedSo) findings.Add(LedgerAuditMessages.ListedOtherwise(findings.Ledger, row.Position));
        if (header.Kind is RecordKind.Reading or RecordKind.Shadow && header.Pack is { } pack) Packs.TryAdd(
            pack.TextDigest, row.Position);
        CheckBody(row, header);
    }

    private void CheckBody(StoredRow row, RecordHeader header)
    {
        if (!row.HasBody)
        {
            if (header.Kind is RecordKind.Erasure or RecordKind.Withdrawal)
                findings.Add(LedgerAuditMessages.BodyGone(findings.Ledger, row.Position, row.Position));
            else if (WithoutBody.Count > 0 && WithoutBody[^1].Last + 1 == row.Position)
                WithoutBody[^1] = WithoutBody[^1] with { Last = row.Position };
            else
                WithoutBody.Add(new PositionRange(row.Position, row.Position));
        }
        else if (row.Body is null || !Commitment.Of(row.Body).AsSpan().SequenceEqual(header.Commitment))
        {
            findings.Add(LedgerAuditMessages.BodyChanged(findings.Ledger, row.Position));
        }
        else if (header.Kind == RecordKind.Erasure)
        {
            TakeErasure(row.Position, row.Body);
        }
    }

    private void TakeErasure(long position, StoredBody body)
    {
        try
        {
            var ranges = ErasureJson.Read(body.Content);
            if (ranges.All(r => r.First >= 0 && r.First <= r.Last && r.Last < position))
            {
                Erased.AddRange(ranges.Select(r => (r, position)));
                return;
            }
        }
        catch (InvalidDataException)
        {
            // Told below, with ranges that cannot be.
        }
        findings.Add(LedgerAuditMessages.ErasureUnclear(findings.Ledger, position));
    }
}
