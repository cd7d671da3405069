using System.Text;
using FindingRules.Ledger;
using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Records;
using FindingRules.Output;
using FindingRules.Service.Records;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Service.Tests.Records;

/// <summary>What is kept of a reading is enough to give it again; what is not enough says so.</summary>
public sealed class RepetitionTests
{
    [Fact]
    public async Task A_reading_kept_by_another_ledger_process_is_the_same_again()
    {
        var pack = ExamplePack.Plain.Compile();
        var study = StudyText.FromBytes("request", Encoding.UTF8.GetBytes(Studies.FullThickness)).Text!;
        var decided = pack.ReadWhole(study).Decided!;
        var answer = ReadingJson.ToBytes(decided.Reading);
        Assert.Equal(ReadingJson.ToBytes(pack.Read(study).Reading!).ToArray(), answer.ToArray());

        var repeated = await RepeatAsync(
            RecordedReading.TextsOf(pack.Pack, ExamplePack.Plain.Files), RecordedReading.Of(decided, answer, study, "test", null));
        Assert.True(repeated.Again!.IsEqual);
        Assert.Equal(decided.Reading.Study, repeated.Explanation!.Study);
    }

    [Fact]
    public async Task A_recorded_answer_that_is_another_one_is_seen()
    {
        var pack = ExamplePack.Plain.Compile();
        var study = StudyText.FromBytes("request", Encoding.UTF8.GetBytes(Studies.FullThickness)).Text!;
        var decided = pack.ReadWhole(study).Decided!;
        var repeated = await RepeatAsync(
            RecordedReading.TextsOf(pack.Pack, ExamplePack.Plain.Files),
            RecordedReading.Of(decided, "{\"study\":\"S-7F3K\"}"u8.ToArray(), study, "test", null));
        Assert.False(repeated.Again!.IsEqual);
        Assert.Equal(ReadingJson.ToBytes(decided.Reading).ToArray(), repeated.Again.Reading.ToArray());
    }

    [Fact]
    public async Task Kept_texts_that_do_not_load_are_said_with_the_reasons()
    {
        var texts = new PackTexts(new PackReference("example", "1.0.0", new string('a', 64), ""), [new PackText("pack.yaml", "pack: 1\n"u8.ToArray())]);
        texts = texts with { Pack = texts.Pack with { TextDigest = texts.ComputeDigest() } };
        var repeated = await RepeatAsync(texts, Entry(texts.Pack, Studies.FullThickness));
        Assert.Equal("FR7058", repeated.Refusal!.Code);
        Assert.NotEmpty(repeated.Details);
    }

    [Fact]
    public async Task A_kept_study_that_is_not_understood_is_said_with_the_reasons()
    {
        var texts = RecordedReading.TextsOf(ExamplePack.Plain.Compile().Pack, ExamplePack.Plain.Files);
        var repeated = await RepeatAsync(texts, Entry(texts.Pack, Studies.Misspelt));
        Assert.Equal("FR7059", repeated.Refusal!.Code);
        Assert.NotEmpty(repeated.Details);
    }

    [Fact]
    public void Rules_that_fired_are_found_whether_or_not_a_line_of_the_reading_says_so()
    {
        var study = StudyText.FromBytes("request", Encoding.UTF8.GetBytes(Studies.FullThickness)).Text!;
        var decided = ExamplePack.Plain.Compile().ReadWhole(study).Decided!;
        var fired = RecordedTerms.Of(decided).Rules.Where(r => r.Outcomes.HasFlag(RuleOutcomes.Fired)).Select(r => r.Rule).ToArray();
        var shown = RecordedTerms.Of(decided).Rules.Where(r => r.Outcomes.HasFlag(RuleOutcomes.Shown)).Select(r => r.Rule).ToArray();
        Assert.Equal(
            decided.Outcome.Rules.Where(r => r.Truth == Model.Truths.Truth.True).Select(r => r.Rule.Id).Distinct().Order(StringComparer.Ordinal), fired);
        Assert.NotEmpty(shown);
        Assert.Contains("CUFF-010", fired);
    }

    private static ReadingEntry Entry(PackReference pack, string study) => new()
    {
        Pack = pack,
        Engine = "0.1.0",
        Actor = "test",
        Study = Encoding.UTF8.GetBytes(study),
        Reading = "{}"u8.ToArray(),
    };

    private static async Task<Repetition> RepeatAsync(PackTexts texts, ReadingEntry entry)
    {
        using var place = new LedgerPlace();
        Guid id;
        await using (var ledger = await place.OpenAsync())
        {
            await ledger.StorePackAsync(texts);
            id = Assert.IsType<AppendResult.Appended>(await ledger.AppendAsync(entry)).Id;
        }
        await using RecordLedger again = await place.OpenAsync();
        return await Repetition.OfAsync(new PackLibrary(again.FindPackAsync), (await again.FindAsync(id))!, wantsAgain: true);
    }
}
