using System.Data.Common;
using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Storage;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Verifying;

/// <summary>Every pack that a reading rests on is there, and its texts have its digest.</summary>
internal static class PackCheck
{
    public static async Task RunAsync(DbConnection connection, IReadOnlyDictionary<string, long> used, Findings findings)
    {
        var stored = await PackShelf.ListAsync(connection, "ORDER BY text_digest");
        foreach (var pack in stored)
        {
            var files = await connection.ListAsync(
                r => new PackText(r.GetString(0), r.GetFieldValue<byte[]>(1)),
                "SELECT path, bytes FROM pack_file WHERE text_digest = @digest", ("@digest", pack.Pack.TextDigest));
            if (new PackTexts(pack.Pack, [.. files]).ComputeDigest() != pack.Pack.TextDigest)
                findings.Add(LedgerAuditMessages.PackChanged(findings.Ledger, pack.Pack.TextDigest));
        }
        var digests = stored.Select(s => s.Pack.TextDigest).ToHashSet(StringComparer.Ordinal);
        foreach (var (digest, record) in used.Where(u => !digests.Contains(u.Key)).OrderBy(u => u.Value))
            findings.Add(LedgerAuditMessages.PackGone(findings.Ledger, digest, record));
    }
}
