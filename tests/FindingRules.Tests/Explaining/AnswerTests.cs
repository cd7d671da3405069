using FindingRules.Explaining;
using FindingRules.Model.Explanations;
using FindingRules.Model.Text;
using FindingRules.Model.Truths;
using FindingRules.Output;
using FindingRules.Testing;
using FindingRules.Tests.Schemas;
using Xunit;

namespace FindingRules.Tests.Explaining;

/// <summary>Each sort of answer: in the form of its schema, without an effect on the reading, and readable.</summary>
public sealed class AnswerTests
{
    private const string Shipped = "rules/msk-ultrasound";
    private const int Every = 40;

    public static TheoryData<QuestionSort> Sorts() => [.. Enum.GetValues<QuestionSort>()];

    [Theory]
    [MemberData(nameof(Sorts))]
    public void An_answer_is_as_its_schema_says_and_changes_no_reading(QuestionSort sort)
    {
        var pack = ExampleStudies.Load(Shipped);
        foreach (var (name, study) in ExampleStudies.Of(Shipped).Where((_, i) => i % Every == (int)sort))
        {
            var text = new SourceText("study.json", study.ToJsonString());
            var before = ReadingJson.ToBytes(pack.Read(text).Reading!).ToArray();
            var trace = Explained.Ask(study.ToJsonString(), new Question(QuestionSort.Trace), pack);
            if (sort is QuestionSort.Why or QuestionSort.WhyNot && trace.Proofs.IsEmpty) continue;
            var rule = sort is QuestionSort.Why or QuestionSort.WhyNot ? trace.Proofs[^1].Rule.Id : null;
            var answer = Explained.Ask(study.ToJsonString(), new Question(sort, rule), pack);
            Assert.True(SchemaFile.Of("trace").Errors(Explained.Json(answer)) is [], name);
            Assert.Equal(before, ReadingJson.ToBytes(pack.Read(text).Reading!).ToArray());
            Assert.All(Explained.Text(answer, sort).Split('\n'), line => Assert.InRange(line.Length, 0, 100));
        }
    }

    [Fact]
    public void Why_not_leads_through_the_topic_down_to_the_finding()
    {
        var study = """{ "study": "S-1", "subjects": [{ "structure": "supraspinatus", "side": "right", "findings": { "fluid": "none", "tear-length": "12 mm" } }] }""";
        var whyNot = Assert.Single(Explained.Ask(study, new Question(QuestionSort.WhyNot, "tear-size.medium")).WhyNot);
        var behind = Assert.Single(whyNot.Obstacle!.Behind);
        Assert.Equal(new ProofKey("CUFF-010", "right supraspinatus"), behind.Rule);
        Assert.Equal(("false-part", Truth.False), (behind.Obstacle.Sort, behind.Obstacle.Part!.Truth));
        Assert.Equal("fluid", Assert.Single(Assert.Single(behind.Obstacle.Part.Looks).Values).Finding);
    }

    [Fact]
    public void Of_many_findings_the_few_that_matter_most_are_tried_further()
    {
        var study = """{ "study": "S-1", "subjects": [{ "structure": "infraspinatus", "side": "right", "normal": true }] }""";
        var answer = Explained.Ask(study, new Question(QuestionSort.WhyNot, "RET-010"), ExampleStudies.Load(Shipped));
        var whyNot = Assert.Single(answer.WhyNot);
        Assert.Equal(["fluid", "reangled", "retraction"], Assert.Single(whyNot.Ways).Changes.Select(c => c.Finding));
        Assert.False(whyNot.Search.IsComplete);
        Assert.Contains(whyNot.Search.Because, b => b.Contains("bear on it most directly", StringComparison.Ordinal));
    }

    [Fact]
    public void What_if_answers_for_every_line_that_could_be_taken_back()
    {
        var study = """
            { "study": "S-1", "facts": { "arm-position": "neutral" }, "subjects": [
              { "structure": "supraspinatus", "side": "left", "findings": { "echo": "hypoechoic" } },
              { "structure": "knee-joint", "side": "left", "findings": { "recess-distended": "present", "joint-vessels": "absent", "doppler-spots": "few" } } ] }
            """;
        var answer = Explained.Ask(study, new Question(QuestionSort.WhatIf), ExampleStudies.Load(Shipped));
        Assert.Equal(answer.Lines.Where(l => l.Sort != "done-step"), answer.WhatIf.Select(w => w.Line));
        Assert.Superset(new HashSet<string> { "suggestion", "next-step", "caution", "held" }, answer.WhatIf.Select(w => w.Line.Sort).ToHashSet());
        Assert.All(answer.WhatIf, w => Assert.NotEmpty(w.Ways));
    }

    [Theory]
    [InlineData(QuestionSort.WhatIf, null)]
    [InlineData(QuestionSort.AskNext, null)]
    [InlineData(QuestionSort.WhyNot, "TEN-010")]
    [InlineData(QuestionSort.WhyNot, "tear-size.large")]
    public void An_answer_as_a_person_reads_it(QuestionSort sort, string? rule) =>
        Snapshot.Match(Explained.Text(Explained.Ask(Explained.FullThickness, new Question(sort, rule)), sort), $"{sort}{rule}");

    [Fact]
    public void A_what_if_of_the_shipped_example_fits_on_two_pages()
    {
        var study = Repository.ReadText(Shipped, "studies/shoulder.json");
        var text = Explained.Text(Explained.Ask(study, new Question(QuestionSort.WhatIf), ExampleStudies.Load(Shipped)), QuestionSort.WhatIf);
        Assert.InRange(text.Split('\n').Length, 20, 120);
    }
}
