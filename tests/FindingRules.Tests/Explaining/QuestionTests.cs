using FindingRules.Explaining;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using Xunit;

namespace FindingRules.Tests.Explaining;

/// <summary>Questions that cannot be answered as they were asked say why, and what would be.</summary>
public sealed class QuestionTests
{
    [Theory]
    [InlineData("CUFF-01", null, "FR8001", "did you mean `CUFF-010`?")]
    [InlineData("NO-SUCH-RULE-1", null, "FR8001", "the files of the pack list its rules")]
    [InlineData("CUFF-090", null, "FR8002", "the pack says: ")]
    [InlineData("CUFF-010", "right supraspinatu", "FR8003", "did you mean `right supraspinatus`?")]
    [InlineData("CUFF-010", "right biceps", "FR8003", "one of `right s")]
    [InlineData("TEN-010", "study", "FR8003", "one of ")]
    public void A_name_that_is_not_found_is_told_with_help(string rule, string? subject, string code, string label)
    {
        var message = Refusal(Explained.FullThickness, new Question(QuestionSort.Why, rule, subject));
        Assert.Equal(code, message.Code);
        Assert.Contains(label, message.Label, StringComparison.Ordinal);
        Assert.Equal(message.Fix is not null, label.StartsWith("did you mean", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("right biceps", "`CUFF-010` is for each cuff-tendon, and `right biceps` is none")]
    [InlineData("left supraspinatus", "the study has no `left supraspinatus`")]
    [InlineData("upper supraspinatus", "`upper supraspinatus` is no subject that the pack knows, expected a side and a structure")]
    [InlineData("right supraspinatus lesion L1", "the study has no `right supraspinatus lesion L1`")]
    public void What_is_wrong_with_a_subject_is_told(string subject, string start) => Assert.StartsWith(
        start, Refusal(Explained.FullThickness, new Question(QuestionSort.Why, "CUFF-010", subject)).Text, StringComparison.Ordinal);

    [Theory]
    [InlineData("right supraspinatus", "right supraspinatus lesion L1", "right supraspinatus lesion L2")]
    [InlineData("Right supraspinatus tendon", "right supraspinatus lesion L1", "right supraspinatus lesion L2")]
    [InlineData("supraspinatus", "left supraspinatus", "right supraspinatus lesion L1", "right supraspinatus lesion L2")]
    [InlineData("left Supraspinatus tendon", "left supraspinatus")]
    [InlineData("right supraspinatus lesion L2", "right supraspinatus lesion L2")]
    public void A_subject_is_found_by_what_it_is_called(string name, params string[] keys)
    {
        var study = """
            { "study": "S-1", "subjects": [
              { "structure": "supraspinatus", "side": "right", "lesions": [{ "id": "L1", "findings": {} }, { "id": "L2", "findings": {} }] },
              { "structure": "supraspinatus", "side": "left", "findings": { "thickness": "6 mm" } } ] }
            """;
        var asked = Explained.Ask(study, new Question(QuestionSort.Why, "CUFF-010", name)).Asked;
        Assert.Equal(keys, asked.Select(a => a.Subject).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Where_several_rules_are_as_near_none_is_guessed()
    {
        string[] rules = ["CUB-010", "CUFF-010", "CUFF-020"];
        var message = ExplanationMessages.UnknownRule(new SourceText("q", "CUF-010").Whole, "CUF-010", "p", rules);
        Assert.Equal(("did you mean `CUB-010` or `CUFF-010`?", null), (message.Label, message.Fix));
        Assert.Equal("CUFF-020", ExplanationMessages.UnknownRule(new SourceText("q", "CUFF-02").Whole, "CUFF-02", "p", rules).Fix!.Replacement);
    }

    [Fact]
    public void A_rule_that_the_study_has_nothing_for_is_no_false_rule()
    {
        var study = """{ "study": "S-1", "facts": { "modality": "radiograph" } }""";
        Assert.Equal("FR8004", Refusal(study, new Question(QuestionSort.WhyNot, "CUFF-010")).Code);
        Assert.Equal("FR8003", Refusal(study, new Question(QuestionSort.WhyNot, "CUFF-010", "right supraspinatus")).Code);
    }

    [Fact]
    public void A_question_that_lacks_its_rule_or_has_one_too_many_is_refused()
    {
        Assert.Equal("FR8005", Refusal(Explained.FullThickness, new Question(QuestionSort.Why)).Code);
        Assert.Equal("FR8006", Refusal(Explained.FullThickness, new Question(QuestionSort.Trace, "CUFF-010")).Code);
        Assert.Equal("FR8006", Refusal(Explained.FullThickness, new Question(QuestionSort.WhatIf, null, "study")).Code);
    }

    [Fact]
    public void A_study_with_a_mistake_is_not_explained()
    {
        var study = """{ "study": "S-1", "subjects": [{ "structure": "supraspinatu" }] }""";
        var answer = Explained.Example.Explain(new SourceText("study.json", study), new Question(QuestionSort.Trace));
        Assert.Null(answer.Explanation);
        Assert.Contains(answer.Messages, m => m.Severity == Severity.Error);
    }

    private static Message Refusal(string study, Question question)
    {
        var answer = Explained.Example.Explain(new SourceText("study.json", study), question);
        Assert.Null(answer.Explanation);
        return Assert.Single(answer.Messages);
    }
}
