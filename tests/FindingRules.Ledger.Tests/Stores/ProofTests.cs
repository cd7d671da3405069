using FindingRules.Ledger.Signing;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

public sealed class ProofTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task Every_record_is_proven_in_every_tree_that_holds_it(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        Assert.Equal(0, (await ledger.GetTreeHeadAsync())!.Size);
        await ledger.AddAsync(0, 530);
        var records = await ledger.ExportAsync().ToListAsync();
        foreach (var record in records.Where(r => r.Index % 37 == 0 || r.Index > 525))
            foreach (var size in new[] { record.Index + 1, Math.Max(record.Index + 1, 512), 530 })
            {
                var proof = (await ledger.ProveInclusionAsync(record, size)).Proof!;
                Assert.True(proof.Holds(), $"record {record.Index} in {size}");
                Assert.True(proof.Head.IsSignedBy(ledger.PublicKey));
                Assert.False((proof with { Header = records[(int)((record.Index + 1) % 530)].Header }).Holds());
            }
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Every_earlier_tree_is_proven_the_beginning_of_the_later(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 300);
        foreach (var size in new long[] { 0, 1, 2, 3, 64, 255, 256, 257, 299, 300 })
        {
            var earlier = (await ledger.GetTreeHeadAsync(size))!;
            var proof = (await ledger.ProveConsistencyAsync(size)).Proof!;
            Assert.True(proof.Holds(earlier), $"from {size}");
            if (size > 0) Assert.False(proof.Holds(earlier with { Root = new string('0', 64) }));
        }
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_proof_beyond_the_tree_is_refused_and_says_what_that_may_mean(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 3);
        var record = await ledger.ExportAsync().LastAsync();
        Assert.Null(await ledger.GetTreeHeadAsync(4));
        Assert.Equal("FR6048", (await ledger.ProveConsistencyAsync(4)).Refusal!.Code);
        Assert.Equal("FR6048", (await ledger.ProveInclusionAsync(record, 4)).Refusal!.Code);
        Assert.Equal("FR6049", (await ledger.ProveInclusionAsync(record, 2)).Refusal!.Code);
        Assert.Equal("FR6049", (await ledger.ProveConsistencyAsync(3, 2)).Refusal!.Code);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_tree_head_is_the_same_after_a_walk_through_JSON_and_no_other_key_signed_it(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 5);
        var head = (await ledger.GetTreeHeadAsync())!;
        var read = SignedTreeHead.Read(head.ToJson())!;
        Assert.Equal(head, read);
        Assert.True(read.IsSignedBy(ledger.PublicKey));
        Assert.False((read with { Size = 4 }).IsSignedBy(ledger.PublicKey));
        Assert.False((read with { Time = read.Time.AddSeconds(1) }).IsSignedBy(ledger.PublicKey));
        using var other = new LedgerPlace(Store.Sqlite);
        await using var stranger = await other.OpenAsync();
        Assert.False(read.IsSignedBy(stranger.PublicKey));
        Assert.Null(SignedTreeHead.Read("{}"u8.ToArray()));
        Assert.Null(SignedTreeHead.Read("nonsense"u8.ToArray()));
    }
}
