using System.Text.Json;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Exporting;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

public sealed class ExportTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task Each_record_is_a_line_in_order_with_its_exact_bytes(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(Entries.Reading(1) with { Reading = "{\"a\":\n1.50}"u8.ToArray() });
        var second = await ledger.AddAsync(Entries.Reading(2));
        await ledger.EraseAsync(new ErasureRequest { Actor = "archive", Reason = "requested", Records = [second.Id] });
        var reported = new Reports();
        using var stream = new MemoryStream();
        Assert.Equal(3, await ExportLines.WriteAsync(stream, ledger.ExportAsync(), reported));
        Assert.Equal([3], reported.Seen);
        var lines = System.Text.Encoding.UTF8.GetString(stream.ToArray()).TrimEnd('\n').Split('\n')
            .Select(l => JsonDocument.Parse(l).RootElement).ToArray();
        Assert.Equal([0, 1, 2], lines.Select(l => l.GetProperty("index").GetInt32()));
        Assert.Equal("{\"a\":\n1.50}", lines[0].GetProperty("answer").GetString());
        Assert.Equal("S-1", lines[0].GetProperty("content").GetProperty("study").GetString());
        Assert.Equal(second.Id, lines[1].GetProperty("header").GetProperty("id").GetGuid());
        Assert.Equal(JsonValueKind.Null, lines[1].GetProperty("content").ValueKind);
        Assert.Equal("erasure", lines[2].GetProperty("header").GetProperty("kind").GetString());
    }

    [Fact]
    public async Task Memory_stays_flat_whatever_is_exported()
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync();
        for (var i = 0; i < 20; i++) await ledger.AddAsync(i * 500, 500);
        var (most, lines, before) = (0L, 0L, GC.GetTotalMemory(true));
        await foreach (var _ in ledger.ExportAsync())
            if (++lines % 1000 == 0)
                most = Math.Max(most, GC.GetTotalMemory(true) - before);
        Assert.Equal(10_000, lines);
        // All of them would be more than 10 MB.
        Assert.True(most < 4_000_000, $"{most} bytes more than before");
    }

    private sealed class Reports : IProgress<long>
    {
        public List<long> Seen { get; } = [];

        public void Report(long value) => Seen.Add(value);
    }
}
