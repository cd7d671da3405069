using System.Buffers;
using System.Collections.Immutable;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Records;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Text;
using FindingRules.Output;
using FindingRules.Service.Hosting;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using FindingRules.Service.Records;

namespace FindingRules.Service.Readings.Batch;

/// <summary>
/// A block of lines in, a line for each study out: its reading, or why there is none. All studies of a batch are read
/// against the packs that were in force when it began. The readings of a block are recorded together, and their lines leave when all are
/// durable.
/// </summary>
/// <param name="recorder">Null where nothing is to be recorded.</param>
internal sealed class BatchAnswers(
    ShelfState state, ReadingRequest asked, StudyEvaluation evaluate, ReadingRecorder? recorder, ServiceSettings settings,
    string request, ILogger log)
{
    private const string Source = "request";

    public async Task<ArrayBufferWriter<byte>> OfAsync(BatchBlock block)
    {
        var lines = block.Lines.Select(line => Answer(block, line)).ToArray();
        var answers = new ArrayBufferWriter<byte>();
        foreach (var line in lines) (await line).WriteTo(answers);
        return answers;
    }

    private Task<BatchAnswer> Answer(BatchBlock block, BatchLine line)
    {
        if (line.IsTooLong)
        {
            var most = settings.ForStudies.StudyBytes;
            return None(line, "the line is too long", ToolMessages.StudyTooLarge(new SourceText(Source, "", line.Number).Whole, most));
        }
        var text = StudyText.FromBytes(Source, block.BytesOf(line), settings.ForStudies, line.Number);
        return text.Text is { } study ? Answer(study, line) : None(line, "the line is not a text", text.Message!);
    }

    private Task<BatchAnswer> Answer(SourceText study, BatchLine line)
    {
        var peek = state.InForce.Length == 1 && asked.Pack is null ? null : StudyPeek.At(study);
        var choice = peek is null ? new PackChoice(state.InForce[0], null) : PackChoice.Of(state, peek, asked.Pack);
        // What is not JSON names no pack, and reads the same against any.
        var chosen = peek is { IsJson: false } ? state.InForce[0] : choice.Pack;
        if (chosen is null) return None(line, "no pack was chosen", choice.Problem!.Cause);
        var (decided, messages) = Evaluate(chosen, study);
        if (decided is not null) return RecordAsync(chosen, decided, study, line);
        // FR0001 is a fault of the tool: the study may be in order.
        return messages.IsEmpty || messages.Any(m => m.Number == 1)
            ? None(line, "the service failed on the study", ServiceMessages.ReadingFailed())
            : None(line, $"the study has {MessageText.Count(messages)}", [.. messages]);
    }

    private async Task<BatchAnswer> RecordAsync(TakenPack pack, DecidedStudy decided, SourceText study, BatchLine line)
    {
        var bytes = ReadingJson.ToBytes(decided.Reading);
        if (recorder is null) return new BatchAnswer(null, bytes);
        try
        {
            return await recorder.AddAsync(pack, decided, bytes, study, null, asked.Correlation) is AppendResult.Appended added
                ? new BatchAnswer(added.Id, bytes)
                : throw new InvalidOperationException("A reading without a key is new.");
        }
        catch (LedgerException e)
        {
            ServiceLog.LedgerFailed(log, e.Told.Code, e.Told.Text);
            return await None(line, "the reading could not be recorded", RecordMessages.LedgerDoesNotWork(e.Told.Code, LedgerLosses.Of(e)));
        }
    }

    private WholeReading Evaluate(TakenPack pack, SourceText study)
    {
        try
        {
            return evaluate(pack.Compiled, study, settings.ForStudies);
        }
#pragma warning disable CA1031 // Whatever went wrong with one study, the others have their readings.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            ServiceLog.Failed(log, request, fault.GetType().Name, fault.StackTrace ?? "");
            return new WholeReading(null, []);
        }
    }

    private static Task<BatchAnswer> None(BatchLine line, string why, params ImmutableArray<Message> messages) =>
        Task.FromResult(BatchAnswer.Without(new NoReading(why, Source, line.Number, messages)));
}
