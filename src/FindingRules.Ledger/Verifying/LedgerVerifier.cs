using System.Data.Common;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Signing;
using FindingRules.Ledger.Storage;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Verifying;

/// <summary>
/// Checks a ledger from its stored bytes alone, and against a signed tree head that was kept elsewhere. The head names the key that it
/// was signed with, so that a ledger that was replaced together with its public key is found out; a key kept elsewhere shows the same
/// without a head.
/// </summary>
public static class LedgerVerifier
{
    private const int PageRecords = 500;

    public static async Task<VerificationReport> VerifyAsync(
        LedgerLocation at, SignedTreeHead? head = null, PublicKey? trusted = null, IProgress<LedgerProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        await using var database = await LedgerDatabases.OpenToReadAsync(at);
        return await database.ReadAsync(async connection =>
        {
            // What is appended or erased meanwhile is not seen.
            await connection.ExecuteAsync(database.BeginSnapshot);
            try
            {
                return await VerifyAsync(connection, at.Name, new Witness(head, trusted), progress, cancellation);
            }
            catch (Exception e) when (
                e is InvalidCastException or FormatException or OverflowException or InvalidOperationException or ArgumentException)
            {
                throw Fail.Damaged(at.Name, "it holds values of another form than were ever written", e);
            }
        }, cancellation);
    }

    private static async Task<VerificationReport> VerifyAsync(
        DbConnection connection, string name, Witness witness, IProgress<LedgerProgress>? progress, CancellationToken cancellation)
    {
        var findings = new Findings(name);
        var head = witness.Head;
        var isOurs = await IsOursAsync(connection, witness, findings);
        var records = new RecordCheck(findings);
        var inner = new List<KeptNode>();
        var tree = new Frontier();
        var (size, frontier) = (await connection.ListAsync(
            r => (r.GetInt64(0), r.GetFieldValue<byte[]>(1)), "SELECT size, frontier FROM tree")).Single();
        var next = 0L;
        if (isOurs && head!.Size == 0) CompareRoot(head, tree, findings);
        while (await StoredRow.ListAsync(connection, next, PageRecords) is { Count: > 0 } page)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var row in page)
            {
                // Pages whose rows are out of order would otherwise be walked in a circle.
                if (row.Position < next || row.Position == long.MaxValue) throw Fail.Damaged(
                    name, "its records do not come in their order");
                if (row.Position > next) findings.Add(LedgerAuditMessages.RecordsMissing(name, next, row.Position - 1));
                next = row.Position + 1;
                tree.Append(records.Check(row), inner);
                if (isOurs && tree.Size == head!.Size) CompareRoot(head, tree, findings);
            }
            progress?.Report(new LedgerProgress(tree.Size, size));
        }
        if (isOurs && tree.Size < head!.Size) findings.Add(LedgerAuditMessages.CutOff(name, tree.Size, head.Size));
        if (size != tree.Size || !frontier.AsSpan().SequenceEqual(tree.ToBytes()) || !await HasAsync(connection, inner))
            findings.Add(LedgerAuditMessages.TreeDiffers(name));
        var covered = isOurs ? Math.Min(head!.Size, tree.Size) : 0;
        var erased = await ErasureCheck.RunAsync(connection, records, covered, findings);
        await PackCheck.RunAsync(connection, records.Packs, findings);
        return new VerificationReport
        {
            Records = tree.Size,
            Covered = covered,
            Erased = erased.All,
            ErasedAfterHead = erased.Unvouched,
            Root = Convert.ToHexStringLower(tree.Root()),
            Head = head,
            Problems = findings.Told,
            ProblemCount = findings.Count,
        };
    }

    private static async Task<bool> IsOursAsync(DbConnection connection, Witness witness, Findings findings)
    {
        var identity = await LedgerIdentity.FindAsync(connection);
        if (witness.Key is { } key && identity?.Key.Id != key.Id)
            findings.Add(LedgerAuditMessages.KeyOfAnother(findings.Ledger, identity?.Key.Id ?? "", key.Id));
        if (witness.Head is not { } head) return false;
        if (identity is null || identity.Id != head.Ledger || identity.Key.Id != head.Key) findings.Add(
            LedgerAuditMessages.HeadOfAnother(findings.Ledger));
        else if (!head.IsSignedBy(identity.Key)) findings.Add(LedgerAuditMessages.HeadNotSigned(findings.Ledger));
        else return true;
        return false;
    }

    private static void CompareRoot(SignedTreeHead head, Frontier tree, Findings findings)
    {
        if (Convert.ToHexStringLower(tree.Root()) != head.Root) findings.Add(LedgerAuditMessages.RootDiffers(findings.Ledger, head.Size));
    }

    private static async Task<bool> HasAsync(DbConnection connection, List<KeptNode> inner)
    {
        var stored = await connection.ListAsync(
            r => new KeptNode(r.GetInt32(0), r.GetInt64(1), r.GetFieldValue<byte[]>(2)),
                "SELECT level, place, hash FROM inner_hash ORDER BY level, place");
        return stored.Count == inner.Count && stored.Zip(inner.OrderBy(n => n.Level).ThenBy(n => n.Place))
            .All(pair => pair.First.Level == pair.Second.Level && pair.First.Place == pair.Second.Place
                && pair.First.Hash.AsSpan().SequenceEqual(pair.Second.Hash));
    }

    /// <summary>What was kept elsewhere.</summary>
    private sealed record Witness(SignedTreeHead? Head, PublicKey? Key);
}
