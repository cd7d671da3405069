using System.Buffers;
using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Text;
using FindingRules.Output;
using FindingRules.Service.Hosting;
using FindingRules.Service.Packs;

namespace FindingRules.Service.Readings.Batch;

/// <summary>
/// A block of lines in, a line for each study out: its reading, or why there is none. All studies of a batch are read
/// against the packs that were in force when it began.
/// </summary>
internal sealed class BatchAnswers(
    ShelfState state, string? inAddress, StudyEvaluation evaluate, ServiceSettings settings, string request, ILogger log)
{
    private const string Source = "request";

    public ArrayBufferWriter<byte> Of(BatchBlock block)
    {
        var answers = new ArrayBufferWriter<byte>();
        foreach (var line in block.Lines)
        {
            Answer(block, line, answers);
            answers.Write("\n"u8);
        }
        return answers;
    }

    private void Answer(BatchBlock block, BatchLine line, IBufferWriter<byte> to)
    {
        if (line.IsTooLong)
        {
            var most = settings.ForStudies.StudyBytes;
            None(to, line, "the line is too long", ToolMessages.StudyTooLarge(new SourceText(Source, "", line.Number).Whole, most));
            return;
        }
        var text = StudyText.FromBytes(Source, block.BytesOf(line), settings.ForStudies, line.Number);
        if (text.Text is not { } study) None(to, line, "the line is not a text", text.Message!);
        else Answer(study, line, to);
    }

    private void Answer(SourceText study, BatchLine line, IBufferWriter<byte> to)
    {
        var peek = state.InForce.Length == 1 && inAddress is null ? null : StudyPeek.At(study);
        var choice = peek is null ? new PackChoice(state.InForce[0], null) : PackChoice.Of(state, peek, inAddress);
        // What is not JSON names no pack, and reads the same against any.
        var chosen = peek is { IsJson: false } ? state.InForce[0] : choice.Pack;
        if (chosen is null)
        {
            None(to, line, "no pack was chosen", choice.Problem!.Cause);
            return;
        }
        var (reading, messages) = Evaluate(chosen, study);
        if (reading is not null) ReadingJson.Write(to, reading);
        // FR0001 is a fault of the tool: the study may be in order.
        else if (messages.IsEmpty || messages.Any(m => m.Number == 1))
            None(to, line, "the service failed on the study", ServiceMessages.ReadingFailed());
        else None(to, line, $"the study has {MessageText.Count(messages)}", [.. messages]);
    }

    private StudyReading Evaluate(TakenPack pack, SourceText study)
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
            return new StudyReading(null, []);
        }
    }

    private static void None(IBufferWriter<byte> to, BatchLine line, string why, params ImmutableArray<Message> messages) =>
        ReadingJson.Write(to, new NoReading(why, Source, line.Number, messages));
}
