using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Exporting;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;
using FindingRules.Testing.Stores;
using Microsoft.Data.Sqlite;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

/// <summary>Somebody with the file changed it: what is asked for is told to be damaged, and never shown as if it were whole.</summary>
public sealed class DamageTests
{
    private const string OtherHeader = "UPDATE record SET header = x'7B22616374', time = 0 WHERE position = 5";

    [Theory]
    [InlineData("UPDATE body SET answer = x'7B7D' WHERE position = 5", "not the one that its header commits to")]
    [InlineData("UPDATE body SET content = x'7B7D' WHERE position = 5", "not the one that its header commits to")]
    [InlineData("UPDATE body SET terms = x'7B7D' WHERE position = 5", "not the one that its header commits to")]
    [InlineData("UPDATE body SET salt = x'00' WHERE position = 5", "not the one that its header commits to")]
    [InlineData("UPDATE body SET terms = 'text' WHERE position = 5", "values of another form")]
    [InlineData(OtherHeader, "not in the form in which records are written")]
    public async Task A_changed_record_is_not_shown(string sql, string what)
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync();
        var key = new RetryKey("report-editor", "k-1", "body"u8.ToArray());
        await ledger.AddAsync(0, 5);
        var id = ((AppendResult.Appended)await ledger.AppendAsync(Entries.Reading(5), key)).Id;
        await ChangeAsync(place, sql);
        foreach (var ask in (Func<Task>[])[() => ledger.FindAsync(id), () => ledger.FindAsync(key), () => ledger.AppendAsync(Entries.Reading(5), key),
            () => ledger.ExportAsync().ToListAsync().AsTask()])
        {
            var e = await Assert.ThrowsAsync<LedgerException>(ask);
            Assert.Equal((LedgerFailure.Damaged, "FR6009"), (e.Failure, e.Told.Code));
            Assert.Contains("record 5", e.Told.Text, StringComparison.Ordinal);
            Assert.Contains(what, e.Told.Text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(5)]
    [InlineData(299)]
    public async Task A_record_that_is_missing_ends_an_export_with_that_word(int gone)
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 300);
        await ChangeAsync(place, $"DELETE FROM record WHERE position = {gone}");
        var indices = new List<long>();
        var e = await Assert.ThrowsAsync<LedgerException>(async () =>
        {
            await foreach (var record in ledger.ExportAsync()) indices.Add(record.Index);
        });
        Assert.Equal(Enumerable.Range(0, gone).Select(i => (long)i), indices);
        Assert.Contains($"record {gone} is missing", e.Told.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_that_cannot_be_read_keeps_no_other_from_being_erased()
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync(new LedgerOptions { Time = new SetClock(DateTimeOffset.UnixEpoch.AddDays(1)) });
        var added = await ledger.AddAsync(0, 20);
        Assert.Equal(20, (await ledger.SearchAsync(new Searching.LedgerQuery())).Records.Length);
        await ChangeAsync(place, OtherHeader);
        var result = await ledger.EraseAsync(new ErasureRequest
        {
            Actor = "archive",
            Reason = "retention",
            Before = DateTimeOffset.UnixEpoch.AddDays(2),
        });
        Assert.Equal((19, 1), (result.Erased, result.Unreadable));
        Assert.True((await ledger.FindAsync(added[19].Id))!.IsErased);
    }

    /// <summary>What an outsider does: SHA-256 of what the export line holds is the commitment of its header.</summary>
    [Theory, OnSqlite, OnPostgreSql]
    public async Task From_a_line_of_the_export_anybody_can_compute_the_commitment(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 3);
        using var stream = new MemoryStream();
        await ExportLines.WriteAsync(stream, ledger.ExportAsync());
        foreach (var line in System.Text.Encoding.UTF8.GetString(stream.ToArray()).TrimEnd('\n').Split('\n'))
        {
            using var json = System.Text.Json.JsonDocument.Parse(line);
            var root = json.RootElement;
            byte[][] parts = [Raw("content"), System.Text.Encoding.UTF8.GetBytes(root.GetProperty("answer").GetString()!), Raw("terms")];
            var hashed = parts.SelectMany(p => (byte[])[0, 0, 0, 0, 0, 0, (byte)(p.Length >> 8), (byte)p.Length, .. p]);
            Assert.Equal(
                root.GetProperty("header").GetProperty("commitment").GetString(),
                Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(
                    [.. Convert.FromHexString(root.GetProperty("salt").GetString()!), .. hashed])));

            byte[] Raw(string name) => System.Text.Encoding.UTF8.GetBytes(root.GetProperty(name).GetRawText());
        }
    }

    private static async Task ChangeAsync(LedgerPlace place, string sql)
    {
        await using var connection = new SqliteConnection($"Data Source={place.Name};Pooling=false");
        await connection.OpenAsync();
        foreach (var trigger in (string[])["record_stays", "record_unchanged", "body_unchanged"])
            await connection.ExecuteAsync($"DROP TRIGGER {trigger}");
        await connection.ExecuteAsync(sql);
    }
}
