using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Records;
using FindingRules.Service.Records;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Service.Tests.Records;

public sealed class ExportTests
{
    private const int Records = 1_500;
    private const int AnswerBytes = 80_000;
    private const long MostLive = 24_000_000;

    /// <summary>120 MB leave the service, and never more than a small part of them is in its memory.</summary>
    [Theory, OnSqlite, OnPostgreSql]
    public async Task Memory_stays_flat_during_an_export_of_many_records(Store store)
    {
        using var place = new LedgerPlace(store);
        await FillAsync(place);
        await using var service = await RunningService.StartAsync(ledger: place);
        await using var export = await service.Client.GetStreamAsync("/v1/ledger/export");
        var (before, most, bytes, lines) = (GC.GetTotalMemory(forceFullCollection: true), 0L, 0L, 0);
        var buffer = new byte[256 * 1024];
        for (var read = 0; (read = await export.ReadAsync(buffer)) > 0; bytes += read)
        {
            lines += buffer.AsSpan(0, read).Count((byte)'\n');
            if (bytes / 10_000_000 != (bytes + read) / 10_000_000)
                most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: true) - before);
        }
        Assert.True(lines >= Records && bytes > (long)Records * AnswerBytes, $"{lines} lines, {bytes} bytes");
        Assert.True(most < MostLive, $"{most} bytes were alive at once");
    }

    private static async Task FillAsync(LedgerPlace place)
    {
        var pack = CompiledPack.Load(ExamplePack.Plain.Files).Pack!.Pack;
        PackTexts texts = RecordedReading.TextsOf(pack, ExamplePack.Plain.Files);
        await using var ledger = await place.OpenAsync();
        await ledger.StorePackAsync(texts);
        var answer = new byte[AnswerBytes];
        answer.AsSpan().Fill((byte)'x');
        (answer[0], answer[^1]) = ((byte)'"', (byte)'"');
        for (var i = 0; i < Records; i += 50)
            await Task.WhenAll(Enumerable.Range(i, 50).Select(n => ledger.AppendAsync(new ReadingEntry
            {
                Pack = texts.Pack,
                Engine = "0.1.0",
                Actor = "report-editor",
                Study = "{}"u8.ToArray(),
                Reading = answer,
            })));
    }
}
