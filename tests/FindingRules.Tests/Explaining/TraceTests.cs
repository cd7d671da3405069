using System.Text.Json.Nodes;
using FindingRules.Explaining;
using FindingRules.Model.Explanations;
using FindingRules.Model.Text;
using FindingRules.Model.Truths;
using FindingRules.Output;
using FindingRules.Testing;
using FindingRules.Tests.Schemas;
using Xunit;

namespace FindingRules.Tests.Explaining;

/// <summary>Why a reading says what it says: each line has its proofs, down to the findings.</summary>
public sealed class TraceTests
{
    public static TheoryData<string> Folders() => [.. ExampleStudies.PackFolders];

    [Theory]
    [MemberData(nameof(Folders))]
    public void Every_trace_is_valid_and_every_key_in_it_leads_somewhere(string folder)
    {
        var pack = ExampleStudies.Load(folder);
        foreach (var (name, study) in Some(folder, 7))
        {
            var trace = Explained.Ask(study.ToJsonString(), new Question(QuestionSort.Trace), pack);
            Assert.True(SchemaFile.Of("trace").Errors(Explained.Json(trace)) is [], name);
            Assert.All(trace.Lines, line => Assert.NotEmpty(line.By));
            Assert.All(trace.Lines.SelectMany(l => l.By), key => Assert.NotNull(trace.Find(key)));
            Assert.All(trace.Answers.SelectMany(a => a.Proven), key => Assert.NotNull(trace.Find(key)));
            Assert.All(trace.Proofs.SelectMany(p => AnswersIn(p.Condition)), key => Assert.NotNull(trace.Find(key)));
        }
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void Each_line_rests_on_rules_that_are_true_and_parts_that_agree(string folder)
    {
        var pack = ExampleStudies.Load(folder);
        foreach (var (_, study) in ExampleStudies.Of(folder))
        {
            var trace = Explained.Ask(study.ToJsonString(), new Question(QuestionSort.Trace), pack);
            Assert.All(trace.Lines.SelectMany(l => l.By), key => Assert.Equal(Truth.True, trace.Find(key)!.Truth));
            Assert.All(trace.Proofs, proof => Agrees(proof.Condition));
        }
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void An_explanation_changes_no_reading(string folder)
    {
        var pack = ExampleStudies.Load(folder);
        foreach (var (_, study) in Some(folder, 5))
        {
            var text = new SourceText("study.json", study.ToJsonString());
            var before = ReadingJson.ToBytes(pack.Read(text).Reading!);
            var trace = pack.Explain(text, new Question(QuestionSort.Trace)).Explanation!;
            Assert.Equal(before.ToArray(), ReadingJson.ToBytes(pack.Read(text).Reading!).ToArray());
            Assert.Equal(
                ExplanationJson.ToBytes(trace).ToArray(),
                ExplanationJson.ToBytes(pack.Explain(text, new Question(QuestionSort.Trace)).Explanation!).ToArray());
        }
    }

    [Fact]
    public void Every_line_of_the_reading_is_explained_in_its_order()
    {
        var reading = Explained.Example.Read(new SourceText("study.json", Explained.FullThickness)).Reading!;
        var lines = Explained.Trace(Explained.FullThickness).Lines;
        Assert.Equal(
            [.. reading.Suggestions.Select(s => s.Text), .. reading.NextSteps.Select(s => s.Text), .. reading.Cautions.Select(c => c.Text)],
            lines.Select(l => l.Text));
    }

    [Fact]
    public void A_value_is_found_in_the_study_and_a_part_in_its_file()
    {
        var proof = Explained.Trace(Explained.FullThickness).Find(new ProofKey("CUFF-010", "right supraspinatus"))!;
        var part = proof.Condition.Parts[1];
        var seen = Assert.Single(Assert.Single(part.Looks).Values);
        Assert.Equal(("reangled", "persists", "sent"), (seen.Finding, seen.Value, seen.Origin));
        Assert.Equal(new StudyPlace("/subjects/0/findings/reangled", 6, 82), seen.Place! with { Column = 82 });
        var text = ExamplePack.Plain.TextOf("rules").Split('\n')[part.Place.Line - 1];
        Assert.Equal("reangled persists", text[(part.Place.Column - 1)..(part.Place.EndColumn - 1)]);
    }

    [Fact]
    public void A_chain_leads_through_the_topic_to_the_rule_that_published_it()
    {
        var trace = Explained.Trace(Explained.FullThickness);
        var proof = trace.Find(new ProofKey("tear-size.medium", "right supraspinatus"))!;
        var answer = trace.Find(Assert.Single(AnswersIn(proof.Condition)))!;
        Assert.Equal(("published", "full-thickness"), (answer.Status, answer.Value));
        Assert.Equal(new ProofKey("CUFF-010", "right supraspinatus"), Assert.Single(answer.Proven));
        Assert.Equal(["CUFF-030"], answer.Holders.Select(h => h.Rule));
    }

    [Fact]
    public void A_superior_that_overrules_is_named_and_proven()
    {
        var why = Explained.Ask(Explained.FullThickness, new Question(QuestionSort.Why, "CUFF-020", "right supraspinatus"));
        var proof = why.Find(Assert.Single(why.Asked))!;
        Assert.Equal("yields", proof.Standing);
        Assert.Equal(("CUFF-010", Truth.True), Assert.Single(proof.Superiors) is var s ? (s.Rule, s.Truth) : default);
        Assert.NotNull(why.Find(new ProofKey("CUFF-010", "right supraspinatus")));
    }

    [Fact]
    public void Arithmetic_is_shown_operand_by_operand_and_exactly()
    {
        var study = """
            { "study": "S-1", "subjects": [
              { "structure": "supraspinatus", "side": "right", "findings": { "thickness": "9.1 mm" } },
              { "structure": "supraspinatus", "side": "left", "findings": { "thickness": "6 mm" } } ] }
            """;
        var why = Explained.Ask(study, new Question(QuestionSort.Why, "TEN-010", "right supraspinatus"));
        var ratio = why.Proofs[0].Condition.Parts[1].Looks[0].Calculation!;
        Assert.Equal(("9.1 mm", "at least", "9 mm", "0.1 mm"), (ratio.Left.Value, ratio.Relation, ratio.Right[0].Value, ratio.Distance));
        Assert.Equal(("*", "1.5", "6 mm"), (ratio.Right[0].Sort, ratio.Right[0].From[0].Value, ratio.Right[0].From[1].Value));
        Assert.True(ratio.IsWithinPrecision);
    }

    [Fact]
    public void What_was_filled_in_as_normal_is_said_to_be()
    {
        var study = """{ "study": "S-1", "subjects": [{ "structure": "supraspinatus", "side": "right", "normal": true }] }""";
        var why = Explained.Ask(study, new Question(QuestionSort.Why, "CUFF-020"));
        var seen = Assert.Single(why.Proofs[0].Condition.Looks[0].Values);
        Assert.Equal(("none", "normal"), (seen.Value, seen.Origin));
        Assert.Null(seen.Place);
    }

    [Fact]
    public void A_trace_as_a_person_reads_it()
    {
        var text = Explained.Text(Explained.Trace(Explained.FullThickness));
        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
        Snapshot.Match(text);
    }

    /// <summary>One of so many, so that the tests stay quick; all sorts of studies are among them.</summary>
    private static IEnumerable<(string Name, JsonObject Study)> Some(string folder, int of) =>
        ExampleStudies.Of(folder).Where((_, i) => i % of == 0);

    private static void Agrees(ProofPart part)
    {
        foreach (var inner in part.Parts) Agrees(inner);
        Assert.All(part.Looks, look => Assert.Equal(part.Truth, look.Truth));
        switch (part.Sort)
        {
            case "all": Assert.Equal(part.Truth, part.Parts.Min(p => p.Truth)); break;
            case "any": Assert.Equal(part.Truth, part.Parts.Max(p => p.Truth)); break;
            case "not": Assert.Equal(part.Truth, Kleene.Not(part.Parts[0].Truth)); break;
            case "statement": Assert.NotEmpty(part.Looks); break;
            default: Assert.Equal("count", part.Sort); break;
        }
    }

    private static IEnumerable<AnswerKey> AnswersIn(ProofPart part) =>
        part.Looks.Select(l => l.Answer).OfType<AnswerKey>().Concat(part.Parts.SelectMany(AnswersIn));
}
