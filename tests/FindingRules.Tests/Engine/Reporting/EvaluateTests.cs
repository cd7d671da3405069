using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Engine.Reporting;

/// <summary>When a second look counts as done.</summary>
public sealed class EvaluateTests
{
    [Theory]
    [InlineData("", false, "")]
    [InlineData("""{ "structure": "subscapularis", "side": "right", "findings": { "fluid": "none" } },""", false, "")]
    [InlineData("""{ "structure": "subscapularis", "side": "right", "normal": true },""", true, "fluid: none; echo: fibrillar")]
    [InlineData("""{ "structure": "subscapularis", "side": "right", "notAssessable": true },""", true, "fluid: not assessable; echo: not assessable")]
    [InlineData("""{ "structure": "subscapularis", "side": "left", "notAssessable": true },""", false, "")]
    public void A_look_is_done_when_it_was_tried(string subscapularis, bool isDone, string found)
    {
        var answer = ExamplePack.Plain.Compile().Read(new SourceText("study.json", $$"""
            { "study": "T-1", "subjects": [{{subscapularis}} { "structure": "biceps", "side": "right", "findings": { "position": "subluxed" } }] }
            """));

        var look = Assert.Single(answer.Reading!.NextSteps, s => s.Step == "evaluate right subscapularis");
        Assert.Equal(isDone, look.IsDone);
        Assert.Equal(found, string.Join("; ", look.Found));
        Assert.Equal(!isDone, answer.Reading.ImpressionText.Contains("Look again at the right subscapularis", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_structures_whose_side_nobody_said_need_not_be_of_one_side()
    {
        var answer = ExamplePack.Plain.Compile().Read(new SourceText("study.json", """
            { "study": "T-1", "subjects": [{ "structure": "subscapularis", "normal": true }, { "structure": "biceps", "findings": { "position": "subluxed" } }] }
            """));

        Assert.All(answer.Reading!.NextSteps, s => Assert.False(s.IsDone, s.Step));
        Assert.Contains("Look again at the subscapularis", answer.Reading.ImpressionText, StringComparison.Ordinal);
    }
}
