using System.Text;
using FindingRules.Ledger.Correlation;
using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Records;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;

namespace FindingRules.Service.Records;

/// <summary>A reading and its pack, as the ledger takes them.</summary>
internal static class RecordedReading
{
    public static ReadingEntry Of(
        DecidedStudy decided, ReadOnlyMemory<byte> answer, SourceText study, string actor, TraceContext? correlation) => new()
        {
            Pack = ReferenceTo(decided.Reading.Pack),
            Engine = decided.Reading.Engine,
            Actor = actor,
            Study = Encoding.UTF8.GetBytes(study.Content),
            Reading = answer,
            Terms = RecordedTerms.Of(decided),
            Correlation = correlation,
        };

    public static PackTexts TextsOf(Pack pack, IEnumerable<PackFile> files) => new(
        new PackReference(pack.Name, pack.Version, pack.MeaningDigest, pack.TextDigest),
        [.. files.Select(f => new PackText(f.Path, f.Bytes))]);

    private static PackReference ReferenceTo(Model.Readings.PackIdentity pack) =>
        new(pack.Name, pack.Version, pack.MeaningDigest, pack.TextDigest);
}
