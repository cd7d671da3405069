using System.Text.Json.Nodes;
using FindingRules.Drill;
using FindingRules.Engine.Reference;
using FindingRules.Model.Explanations;
using FindingRules.Model.Messages;
using FindingRules.Model.Studies;
using FindingRules.Testing;
using FindingRules.Tests.Schemas;
using Xunit;

namespace FindingRules.Tests.Drill;

public sealed class JudgingTests
{
    private static readonly CompiledPack Shipped = PackFolder.Load(Repository.PathOf("rules", "msk-ultrasound")).Pack!;
    private static readonly DrillDeck Deck = DrillDeck.Of(Shipped);
    private static readonly SchemaFile JudgementSchema = SchemaFile.From("""{ "$ref": "drill.schema.json#/$defs/judgement" }""");

    [Fact]
    public void What_a_wrong_option_is_said_to_need_makes_it_right()
    {
        var checkedClaims = 0;
        foreach (var made in WholeDeckTests.Some(100))
            foreach (var claim in made.Claims.Where(c => c is Say or TakeStep && c != made.Spot.Right))
            {
                var (rule, subject) = claim.By[0];
                var ways = made.View.Explainer.WhyNot(rule, subject).WhyNot.SelectMany(w => w.Ways).ToList();
                if (ways.Count == 0) continue;
                var judgement = Judge(made.Question, made.Claims.IndexOf(claim) + 1);
                var told = judgement.Overlooked.Where(o => o.Sort is "contradicts" or "missing")
                    .Select(o => (o.Subject, o.Finding, o.To)).ToList();
                var way = ways.Find(w => w.Changes.Select(c => (c.Subject, c.Finding, (string?)c.To)).SequenceEqual(told));
                Assert.NotNull(way);
                var outcome = ReferenceInterpreter.Decide(made.View.Pack.Pack, Changed(made, way));
                Assert.True(WholeDeckTests.IsSo(claim, outcome), $"{made.Spot.Case.Id}: {claim.By[0]} {string.Join("; ", way.Changes)}");
                checkedClaims++;
            }
        Assert.InRange(checkedClaims, 5, 1_000);
    }

    [Fact]
    public void The_right_option_with_all_that_decides_it_is_right()
    {
        foreach (var question in Deck.Draw(3, 8))
        {
            var answer = Deck.Answer(question.Id)!;
            var judgement = Judge(question, answer.Right, [.. answer.RestsOn]);
            Assert.Equal((DrillVerdict.Right, 0), (judgement.Verdict, judgement.Overlooked.Length));
            Assert.Equal(DrillVerdict.Right, Judge(question, answer.Right).Verdict);
        }
    }

    [Fact]
    public void A_finding_that_plays_no_part_is_the_wrong_reason()
    {
        var (question, answer, idle) = (
            from q in Deck.Draw(3, 12)
            let a = Deck.Answer(q.Id)!
            where q.Sort != DrillSort.LookNext && !a.RestsOn.IsEmpty
            from f in q.Subjects.SelectMany(s => s.Findings)
            where !a.RestsOn.Contains(f.Mark)
            select (q, a, f.Mark)).First();
        var judgement = Judge(question, answer.Right, [.. answer.RestsOn, idle]);
        Assert.Equal(DrillVerdict.WrongReason, judgement.Verdict);
        Assert.Equal(idle, Assert.Single(judgement.Overlooked).Mark);
    }

    [Fact]
    public void A_reason_that_leaves_out_what_is_essential_is_incomplete()
    {
        var (question, answer) = Deck.Draw(3, 12).Select(q => (q, Deck.Answer(q.Id)!)).First(p => p.Item2.Essential.Length >= 2);
        var judgement = Judge(question, answer.Right, answer.Essential[0]);
        Assert.Equal(DrillVerdict.ReasonIncomplete, judgement.Verdict);
        Assert.Equal(answer.Essential.Skip(1), judgement.Overlooked.Select(o => o.Mark));
    }

    [Fact]
    public void Every_judgement_has_a_trace_and_the_caution()
    {
        foreach (var question in Deck.Draw(5, 2))
            foreach (var option in question.Options)
            {
                var judgement = Judge(question, option.Number);
                Assert.NotEmpty(judgement.Traces);
                Assert.Contains("DEMONSTRATION", judgement.Notice, StringComparison.Ordinal);
                Assert.Contains(FindingRules.Model.Packs.Pack.StandingNotice, judgement.Notice, StringComparison.Ordinal);
                Assert.Contains("invented", judgement.Notice, StringComparison.Ordinal);
                Assert.Empty(JudgementSchema.Errors(JsonNode.Parse(DrillJson.ToBytes(judgement))!));
            }
    }

    [Theory]
    [InlineData("question 4", "FR8101")]
    [InlineData("d1-000000000000-000000000000-1-0000", "FR8101")]
    public void A_wrong_id_is_said_to_be_wrong(string id, string code)
    {
        var messages = new MessageBag();
        Assert.Null(Deck.Judge(id, 1, [], messages));
        Assert.Equal(code, Assert.Single(messages.Sorted()).Code);
    }

    [Fact]
    public void A_slip_in_an_id_is_noticed_and_another_pack_is_told()
    {
        var id = Deck.Draw(3, 1)[0].Id;
        Assert.Equal("FR8101", CodeOf(Deck, id[..^1] + (id[^1] == '0' ? '1' : '0'), 1));
        Assert.Equal("FR8102", CodeOf(DrillDeck.Of(ExamplePack.Plain.Compile()), id, 1));
        Assert.Equal("FR8103", CodeOf(Deck, id, 99));
        Assert.Equal("FR8104", CodeOf(Deck, id, 1, "zz"));
    }

    private static string CodeOf(DrillDeck deck, string id, int choice, params string[] deciding)
    {
        var messages = new MessageBag();
        Assert.Null(deck.Judge(id, choice, [.. deciding], messages));
        return Assert.Single(messages.Sorted()).Code;
    }

    private static DrillJudgement Judge(DrillQuestion question, int choice, params string[] deciding)
    {
        var messages = new MessageBag();
        var judgement = Deck.Judge(question.Id, choice, [.. deciding], messages);
        Assert.Empty(messages.Sorted());
        return judgement!;
    }

    /// <summary>The study with the values that the way names, read from their text as a study writes them.</summary>
    private static Study Changed(Made made, Way way)
    {
        var study = made.Spot.Case.Study;
        foreach (var change in way.Changes) study = ChangedStudy.With(made.View.Pack.Pack, study, change);
        return study;
    }
}
