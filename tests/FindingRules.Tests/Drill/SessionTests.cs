using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Drill;
using FindingRules.Testing;
using FindingRules.Tests.Schemas;
using Xunit;

namespace FindingRules.Tests.Drill;

public sealed class SessionTests
{
    private static readonly CompiledPack Shipped = PackFolder.Load(Repository.PathOf("rules", "msk-ultrasound")).Pack!;
    private static readonly DrillDeck Deck = DrillDeck.Of(Shipped);

    private static DrillProgress None => new() { Pack = Deck.Pack.Name };

    [Fact]
    public void The_same_pack_and_seed_give_the_same_bytes()
    {
        var again = DrillDeck.Of(PackFolder.Load(Repository.PathOf("rules", "msk-ultrasound")).Pack!);
        var bytes = DrillJson.ToBytes(DrillSheet.Of(Deck, 7, 4, hasAnswers: true));
        Assert.Equal(bytes, DrillJson.ToBytes(DrillSheet.Of(again, 7, 4, hasAnswers: true)));
        Assert.NotEqual(bytes, DrillJson.ToBytes(DrillSheet.Of(Deck, 8, 4, hasAnswers: true)));
    }

    [Fact]
    public void The_order_of_a_seed_is_that_of_the_published_scheme()
    {
        // Worked out apart, from the scheme; its first number for the seed 0 is e220a8397b1dcdaf.
        Assert.Equal([6, 3, 2, 9, 8, 1, 4, 7, 0, 5], new SeededOrder(0).Shuffle(Enumerable.Range(0, 10)));
    }

    [Fact]
    public void An_export_is_as_its_schema_says_and_has_the_answers_apart()
    {
        var sheet = DrillSheet.Of(Deck, 7, 5, hasAnswers: true);
        var json = JsonNode.Parse(DrillJson.ToBytes(sheet))!;
        Assert.Empty(SchemaFile.Of("drill").Errors(json));
        Assert.Equal(Ids(json["questions"]), Ids(json["answers"]));
        var alone = Encoding.UTF8.GetString(DrillJson.ToBytes(DrillSheet.Of(Deck, 7, 2, hasAnswers: false)));
        Assert.DoesNotContain("answers", alone, StringComparison.Ordinal);
        var page = DrillMarkdown.Of(sheet);
        var questions = page[..page.IndexOf("# Answers", StringComparison.Ordinal)];
        Assert.DoesNotContain("It rests on", questions, StringComparison.Ordinal);
        Assert.All(new[] { questions, page[questions.Length..] }, p => Assert.Contains("DEMONSTRATION", p, StringComparison.Ordinal));
    }

    private static IEnumerable<string> Ids(JsonNode? list) => list!.AsArray().Select(q => (string)q!["id"]!);

    [Fact]
    public void What_was_answered_wrong_comes_again_after_three_others()
    {
        var session = new DrillSession(Deck, None, 7, 6);
        var keys = new List<string>();
        while (session.Next() is { } question)
        {
            keys.Add(question.Key);
            session.Record(question, keys.Count == 1 ? DrillVerdict.Wrong : DrillVerdict.Right);
        }
        Assert.Equal((6, 0, 4), (keys.Count, keys.IndexOf(keys[0]), keys.LastIndexOf(keys[0])));
        Assert.Equal(5, keys.Distinct().Count());
    }

    [Fact]
    public void Whoever_answers_everything_wrong_is_asked_each_question_twice_at_most()
    {
        var session = new DrillSession(Deck, None, 7, 12);
        var keys = new List<string>();
        while (session.Next() is { } question)
        {
            keys.Add(question.Key);
            session.Record(question, DrillVerdict.Wrong);
        }
        Assert.Equal(12, keys.Count);
        Assert.All(keys.CountBy(k => k), k => Assert.InRange(k.Value, 1, 2));
    }

    [Fact]
    public void A_card_rests_longer_the_higher_its_box()
    {
        var progress = None.Begin().With("aaaaaaaaaaaa", DrillVerdict.Right).With("bbbbbbbbbbbb", DrillVerdict.Wrong).Begin();
        Assert.Equal((2, 0, 1), (progress.Turn("aaaaaaaaaaaa"), progress.Turn("bbbbbbbbbbbb"), progress.Turn("cccccccccccc")));
        Assert.Equal(0, progress.Begin().Turn("aaaaaaaaaaaa"));
        Assert.Equal(1, progress.With("aaaaaaaaaaaa", DrillVerdict.WrongReason).Questions["aaaaaaaaaaaa"].Box);
    }

    [Fact]
    public void The_next_session_begins_with_what_was_answered_wrong()
    {
        var first = new DrillSession(Deck, None, 7, 4);
        var wrong = "";
        for (var i = 0; first.Next() is { } question; i++)
        {
            if (i == 2) wrong = question.Key;
            first.Record(question, i == 2 ? DrillVerdict.Wrong : DrillVerdict.Right);
        }
        Assert.Equal(wrong, new DrillSession(Deck, first.Progress, 8, 4).Next()!.Key);
    }

    [Fact]
    public void Progress_is_read_as_it_was_written()
    {
        var progress = (None with { Learner = "L-07" }).Begin().With("aaaaaaaaaaaa", DrillVerdict.ReasonIncomplete);
        var (read, why) = DrillProgress.Read(progress.ToBytes());
        Assert.Null(why);
        Assert.Equal(progress.ToBytes(), read!.ToBytes());
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("""{ "format": "other", "version": 1, "pack": "p" }""")]
    [InlineData("""{ "version": 2, "pack": "p" }""")]
    [InlineData("""{ "pack": "p", "name": "x" }""")]
    [InlineData("""{ "pack": "p", "learner": "a name" }""")]
    [InlineData("""{ "pack": "p", "sessions": 1, "questions": { "aaaaaaaaaaaa": { "box": 9, "last": 1, "right": 0, "wrong": 0 } } }""")]
    [InlineData("""{ "pack": "p", "questions": null }""")]
    public void What_is_no_progress_is_refused(string text)
    {
        var (progress, why) = DrillProgress.Read(Encoding.UTF8.GetBytes(text));
        Assert.Null(progress);
        Assert.False(string.IsNullOrEmpty(why));
    }
}
