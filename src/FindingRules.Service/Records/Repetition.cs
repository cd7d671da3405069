using System.Collections.Immutable;
using System.Text;
using FindingRules.Explaining;
using FindingRules.Ledger.Records;
using FindingRules.Model.Explanations;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Output;

namespace FindingRules.Service.Records;

/// <summary>
/// A recorded reading taken back to its reasons: explained, and evaluated anew, from the pack texts that the ledger keeps.
/// </summary>
/// <param name="Explanation">Null where there is a refusal.</param>
/// <param name="Again">Null where it was not asked for.</param>
/// <param name="Refusal">Why it cannot be repeated.</param>
/// <param name="Details">What is behind the refusal.</param>
public sealed record Repetition(Explanation? Explanation, SecondReading? Again, Message? Refusal, ImmutableArray<Message> Details)
{
    // What was taken once is taken again, whatever the limits were.
    private static readonly LoadLimits AnySize = LoadLimits.Default with { StudyBytes = int.MaxValue, DocumentDepth = 1000 };

    public static async Task<Repetition> OfAsync(PackLibrary packs, LedgerRecord record, bool wantsAgain)
    {
        var id = record.Id.ToString();
        if (record is not { Kind: RecordKind.Reading or RecordKind.Shadow, Pack: { } reference }) return No(RecordMessages.NotAReading(id));
        if (record.Body is not { } body) return No(RecordMessages.CannotRepeat(id));
        var load = await packs.FindAsync(reference.TextDigest);
        if (load?.Pack is not { } pack) return No(RecordMessages.PackNotLoaded(reference.Name, reference.Version), load?.Messages ?? []);
        var study = new SourceText("record", Encoding.UTF8.GetString(body.Content.Span));
        var explained = pack.Explain(study, new Question(QuestionSort.Trace), AnySize);
        if (explained.Explanation is not { } explanation) return No(RecordMessages.NotReadAgain(id), explained.Messages);
        return new Repetition(explanation, wantsAgain ? Read(pack, study, record, body) : null, null, []);
    }

    private static SecondReading Read(CompiledPack pack, SourceText study, LedgerRecord record, RecordBody body)
    {
        // It was understood a moment ago, so there is a reading.
        var reading = pack.Read(study, AnySize).Reading!;
        var bytes = ReadingJson.ToBytes(reading);
        return new SecondReading(bytes.Span.SequenceEqual(body.Answer.Span), record.Engine ?? "", reading.Engine, bytes);
    }

    private static Repetition No(Message refusal, ImmutableArray<Message> details = default) =>
        new(null, null, refusal, details.IsDefault ? [] : details);
}

/// <param name="IsEqual">Byte for byte the recorded one.</param>
/// <param name="EngineThen">The version that made the recorded one.</param>
/// <param name="EngineNow">The version that made this one.</param>
public sealed record SecondReading(bool IsEqual, string EngineThen, string EngineNow, ReadOnlyMemory<byte> Reading);
