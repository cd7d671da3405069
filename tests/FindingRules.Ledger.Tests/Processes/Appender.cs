using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Tests.Stores;
using FindingRules.Model.Messages;
using FindingRules.Testing.Stores;

namespace FindingRules.Ledger.Tests.Processes;

/// <summary>
/// What the assembly does when it is run as a program: waits for the place of a ledger and its key, opens it, and
/// appends without end, saying the number and
/// id of each record when it is acknowledged.
/// </summary>
internal static class Appender
{
    private const int Writers = 8;
    private static readonly Lock Output = new();

    public static async Task<int> RunAsync(string[] args)
    {
        if (args is not ["append"]) return 1;
        await WarmUpAsync();
        Say("ready");
        if (Console.ReadLine()?.Split('\t') is not [var place, var key, var first]) return 1;
        try
        {
            var ledger = await RecordLedger.OpenAsync(LedgerLocation.Read(place, new MessageBag())!, new LedgerOptions { KeyFile = key });
            Say("open");
            await Task.WhenAll(Enumerable.Range(0, Writers).Select(w => WriteAsync(ledger, int.Parse(first) + w)));
        }
        catch (LedgerException e)
        {
            Say($"failed {e.Told.Code}");
        }
        return 0;
    }

    public static ReadingEntry Entry(int number) => Entries.Reading(number);

    public static RetryKey Key(int number) => new("report-editor", $"k-{number}", BitConverter.GetBytes(number));

    private static async Task WriteAsync(RecordLedger ledger, int number)
    {
        for (; ; number += Writers)
            if (await ledger.AppendAsync(Entry(number), Key(number)) is AppendResult.Appended appended)
                Say($"{number} {appended.Id}");
    }

    // The first append of a process compiles half of the program; the moments to be killed at lie after that.
    private static async Task WarmUpAsync()
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 20);
        await ledger.AppendAsync(Entry(21), Key(21));
    }

    private static void Say(string line)
    {
        lock (Output)
        {
            Console.Out.WriteLine(line);
            Console.Out.Flush();
        }
    }
}
