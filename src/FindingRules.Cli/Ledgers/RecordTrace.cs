using System.Globalization;
using System.Text;
using FindingRules.Explaining;
using FindingRules.Ledger.Records;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Records;

namespace FindingRules.Cli.Ledgers;

/// <summary><c>findingrules trace ID --ledger LOCATION</c>: a recorded reading, explained from the pack as it was then.</summary>
internal sealed class RecordTrace(Terminal terminal, bool isJson, bool wantsAgain)
{
    public Task<int> RunAsync(string place, Guid id, CancellationToken stop) => LedgerCall.ReadAsync(terminal, place, async ledger =>
    {
        if (await ledger.FindAsync(id, stop) is not { } record)
            return LedgerCall.Refuse(terminal, RecordMessages.NoSuchRecord(id.ToString()));
        var repetition = await Repetition.OfAsync(new PackLibrary(ledger.FindPackAsync), record, wantsAgain);
        if (repetition.Refusal is { } refusal) return LedgerCall.Refuse(terminal, [refusal, .. repetition.Details]);
        if (isJson) terminal.Out.WriteLine(Encoding.UTF8.GetString(RecordJson.ToBytes(id, repetition)));
        else Write(record, repetition);
        terminal.Out.Flush();
        return repetition.Again is { IsEqual: false } ? ExitCode.NotVerified : ExitCode.Fine;
    });

    private void Write(LedgerRecord record, Repetition repetition)
    {
        var (to, pack) = (terminal.Out, record.Pack!);
        var time = record.Time.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
        to.WriteLine($"Record {record.Id}, number {record.Index} of the ledger");
        to.WriteLine($"  read at {time} UTC with pack {pack.Name} {pack.Version} by engine {record.Engine}, for {record.Actor}");
        to.WriteLine($"  pack digest {pack.MeaningDigest[..16]}, of its texts {pack.TextDigest[..16]}");
        if (repetition.Again is { } again) WriteAgain(again);
        to.WriteLine();
        ExplanationText.Write(to, repetition.Explanation!, QuestionSort.Trace);
    }

    private void WriteAgain(SecondReading again)
    {
        terminal.Out.WriteLine(again.IsEqual
            ? $"  evaluated anew by engine {again.EngineNow}: the same reading, byte for byte"
            : $"  EVALUATED ANEW by engine {again.EngineNow} IT IS ANOTHER READING; `--output json` has it as it is now");
    }
}
