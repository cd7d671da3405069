using CsCheck;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Signing;
using FindingRules.Ledger.Storage;
using FindingRules.Ledger.Tests.Stores;
using FindingRules.Ledger.Verifying;
using FindingRules.Testing.Stores;
using Microsoft.Data.Sqlite;
using Xunit;

namespace FindingRules.Ledger.Tests.Verifying;

/// <summary>Any change to a record, to the order of records or to their presence that a tree head covers is found.</summary>
public sealed class TamperingTests : IAsyncLifetime, IDisposable
{
    private const int Records = 280;
    private static readonly string[] Ways = [.. Tampering.Ways, Tampering.ForgedErasure];
    private readonly LedgerPlace _place = new(Store.Sqlite);
    private SignedTreeHead _head = null!;
    private string[] _original = [];
    private int _copies;

    private string Original => ((LedgerLocation.SqliteFile)_place.Location).Path;

    public async Task InitializeAsync()
    {
        await using (var ledger = await _place.OpenAsync())
        {
            var added = await ledger.AddAsync(0, Records - 1);
            await ledger.EraseAsync(new ErasureRequest
            {
                Actor = "archive",
                Reason = "retention",
                Records = [added[17].Id, added[18].Id]
            });
            _head = (await ledger.GetTreeHeadAsync())!;
        }
        Assert.False(File.Exists($"{Original}-wal"), "the log was not taken into the file when the ledger was closed");
        _original = await ReadAsync(Original);
        Assert.Equal(Records, _original.Length);
        Assert.Empty((await VerifyAsync(Original)).Problems);
    }

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose() => _place.Dispose();

    [Fact]
    public void Whatever_is_done_to_the_records_is_found_even_when_all_hashes_are_computed_anew() =>
        Gen.Select(Gen.Int[0, Ways.Length - 1].Select(i => Ways[i]), Gen.Int, Gen.Bool).Sample(
            (way, seed, isCovered) =>
        {
            var copy = Copy();
            Tampering.DoAsync(copy, way, new Random(seed), isCovered).GetAwaiter().GetResult();
            var report = VerifyAsync(copy).GetAwaiter().GetResult();
            Assert.False(report is { IsSound: true, ErasedAfterHead: 0 }, $"{way}, covered: {isCovered}");
            File.Delete(copy);
        }, iter: 120, threads: 1);

    [Fact]
    public void Bytes_turned_anywhere_in_the_file_are_found_or_change_no_record() =>
        Gen.Select(Gen.Int, Gen.Int[1, 3]).Sample((seed, turned) =>
        {
            var copy = Copy();
            var bytes = File.ReadAllBytes(copy);
            var random = new Random(seed);
            for (var i = 0; i < turned; i++) bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
            File.WriteAllBytes(copy, bytes);
            try
            {
                if (VerifyAsync(copy).GetAwaiter().GetResult().IsSound)
                    Assert.Equal(_original, ReadAsync(copy).GetAwaiter().GetResult());
            }
            catch (LedgerException e)
            {
                Assert.Contains(e.Failure, new[] { LedgerFailure.Damaged, LedgerFailure.NotALedger, LedgerFailure.NewerSchema,
                    LedgerFailure.Device, LedgerFailure.Missing });
            }
            File.Delete(copy);
        }, iter: 150, threads: 1);

    /// <summary>Source: the SQLite database file format, section 1.6: a leaf page of a table lists where its rows
    /// lie, in their order.</summary>
    [Fact]
    public async Task Pages_whose_rows_are_out_of_order_are_found_and_not_walked_in_a_circle()
    {
        const int pageSize = 4096;
        var bytes = await File.ReadAllBytesAsync(Original);
        var (leaves, refused) = (0, 0);
        for (var page = pageSize; page < bytes.Length; page += pageSize)
        {
            var rows = (bytes[page + 3] << 8) | bytes[page + 4];
            if (bytes[page] != 0x0D || rows < 3 || leaves++ >= 60) continue;
            var (copy, changed) = (Copy(), (byte[])bytes.Clone());
            var (first, last) = (page + 8, page + 8 + (2 * (rows - 1)));
            for (var i = 0; i < 2; i++) (changed[first + i], changed[last + i]) = (changed[last + i], changed[first + i]);
            await File.WriteAllBytesAsync(copy, changed);
            try
            {
                var report = await Task.Run(() => VerifyAsync(copy)).WaitAsync(TimeSpan.FromMinutes(1));
                if (report.IsSound) Assert.Equal(_original.Order(), (await ReadAsync(copy)).Order());
            }
            catch (LedgerException e)
            {
                Assert.Equal(LedgerFailure.Damaged, e.Failure);
                refused++;
            }
        }
        Assert.True(refused > 10, $"of {leaves} pages {refused} were refused");
    }

    [Theory]
    [InlineData("content", "FR6022")]
    [InlineData("salt", "FR6022")]
    [InlineData("no body", "FR6023")]
    [InlineData("header", "FR6020")]
    [InlineData("kind", "FR6031")]
    [InlineData("remove", "FR6021")]
    [InlineData("cut", "FR6027")]
    [InlineData("swap", "FR6024")]
    public async Task The_first_message_says_what_was_done(string way, string code)
    {
        var copy = Copy();
        await Tampering.DoAsync(copy, way, new Random(1), isCovered: false);
        Assert.Equal(code, (await VerifyAsync(copy)).Problems[0].Code);
    }

    [Theory]
    [InlineData("UPDATE pack_file SET bytes = x'00'", "FR6028")]
    [InlineData("DELETE FROM pack", "FR6029")]
    [InlineData("UPDATE inner_hash SET hash = x'00'", "FR6030")]
    [InlineData("INSERT INTO body SELECT 17, salt, content, answer, terms FROM body WHERE position = 1", "FR6022")]
    public async Task What_lies_beside_the_records_is_checked_too(string sql, string code)
    {
        var copy = Copy();
        await using (var connection = new SqliteConnection($"Data Source={copy};Pooling=false"))
        {
            await connection.OpenAsync();
            await connection.ExecuteAsync(sql);
        }
        Assert.Equal(code, (await VerifyAsync(copy)).Problems[0].Code);
    }

    [Fact]
    public async Task A_forged_erasure_after_the_head_is_told_apart_from_one_that_the_head_covers()
    {
        var copy = Copy();
        Assert.Equal((2, 0), await CountAsync(copy));
        await Tampering.DoAsync(copy, Tampering.ForgedErasure, new Random(1), isCovered: true);
        Assert.Equal((3, 1), await CountAsync(copy));

        async Task<(long, long)> CountAsync(string path)
        {
            var report = await VerifyAsync(path);
            Assert.Empty(report.Problems);
            return (report.Erased, report.ErasedAfterHead);
        }
    }

    [Fact]
    public async Task An_erased_body_that_is_back_is_found()
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync();
        var added = await ledger.AddAsync(0, 3);
        await using var connection = new SqliteConnection(
            $"Data Source={((LedgerLocation.SqliteFile)place.Location).Path};Pooling=false");
        await connection.OpenAsync();
        await connection.ExecuteAsync("CREATE TABLE backup AS SELECT * FROM body");
        await ledger.EraseAsync(new ErasureRequest { Actor = "archive", Reason = "retention", Records = [added[1].Id] });
        await connection.ExecuteAsync("INSERT INTO body SELECT * FROM backup WHERE position NOT IN (SELECT position FROM body)");
        Assert.Equal("FR6032", Assert.Single((await LedgerVerifier.VerifyAsync(place.Location)).Problems).Code);
    }

    private string Copy()
    {
        var copy = _place.PathOf($"copy-{_copies++}.db");
        File.Copy(Original, copy);
        return copy;
    }

    private Task<VerificationReport> VerifyAsync(string path) => LedgerVerifier.VerifyAsync(new LedgerLocation.SqliteFile(path), _head);

    private static async Task<string[]> ReadAsync(string path)
    {
        await using var connection = new SqliteConnection($"Data Source={path};Mode=ReadOnly;Pooling=false");
        await connection.OpenAsync();
        return [.. await connection.ListAsync(
            r => string.Join(' ', Enumerable.Range(0, r.FieldCount)
                .Select(i => r.GetValue(i) is byte[] b ? Convert.ToHexString(b) : $"{r.GetValue(i)}")),
            "SELECT r.*, b.* FROM record r LEFT JOIN body b ON b.position = r.position ORDER BY r.position")];
    }
}
