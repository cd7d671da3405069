using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Model.Truths;
using FindingRules.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Engine.Properties;

/// <summary>A lesion is compared with itself, also where another structure looks on.</summary>
public sealed class EarlierLesionTests
{
    private const string Measures = """
        measures:
          growth: { for: each cuff-tendon, is: tear-length / earlier tear-length, unit: "%", title: growth }
        ...

        """;

    private const string Rules = """
        rules:
          - id: GROW-010
            for: each cuff-tendon
            rule: contralateral growth above 150 % → evaluate subscapularis
            because: Invented for a test.
            source: [trade]
        ...

        """;

    [Theory]
    [InlineData("L1", "10 mm", Truth.True)]
    [InlineData("L1", "20 mm", Truth.False)]
    [InlineData("L9", "10 mm", Truth.Unknown)]
    public void What_is_measured_on_the_other_side_is_compared_with_the_same_lesion_there(string lesionBefore, string before, Truth expected)
    {
        var pack = ExamplePack.Plain.With("rules", Rules).With("measures", Measures).Compile().Pack;
        var messages = new MessageBag();
        var study = StudyReader.Read(new SourceText("study.json", $$"""
            { "study": "T-1",
              "subjects": [
                { "structure": "supraspinatus", "side": "right" },
                { "structure": "supraspinatus", "side": "left", "lesions": [
                  { "id": "L1", "findings": { "tear-length": "20 mm" } }] }],
              "earlier": { "subjects": [
                { "structure": "supraspinatus", "side": "left", "lesions": [
                  { "id": "{{lesionBefore}}", "findings": { "tear-length": "{{before}}" } }, { "id": "L3", "findings": { "tear-length": "1 mm" } }] }] } }
            """), pack, LoadLimits.Default, messages)!;
        var outcome = BothInterpreters.Decide(pack, study);
        Assert.Equal(expected, outcome.Rules.Single(r => r.Rule.Id == "GROW-010" && r.Subject.Key == "right supraspinatus").Truth);
    }
}
