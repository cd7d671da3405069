using FindingRules.Model.Readings;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Engine.Reporting;

/// <summary>What is said of rules that are left undecided: what they lack, and which of them are not spoken of.</summary>
public sealed class UndecidedTests
{
    private const string Torn = """
        { "structure": "supraspinatus", "side": "right", "findings": {
            "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists", "tear-length": "14 mm" } }
        """;

    [Fact]
    public void A_count_that_is_open_names_the_structures_that_nobody_examined()
    {
        var rule = Undecided(ExamplePack.Plain, $"[{Torn}]", "STUDY-001")!;

        Assert.Contains(new MissingKey("right infraspinatus", "tear-depth"), rule.Missing);
        Assert.Contains(new MissingKey("left subscapularis", "tear-depth"), rule.Missing);
        Assert.DoesNotContain(rule.Missing, m => m.Subject == "right supraspinatus");
    }

    [Fact]
    public void What_nobody_examined_is_not_asked_next()
    {
        var reading = Read(ExamplePack.Plain, $"[{Torn}]");

        Assert.DoesNotContain(reading.AskNext, a => a.Subject != "right supraspinatus");
    }

    [Theory]
    [InlineData("tear-depth full-thickness and tear-length above earlier tear-length + 5 mm", false)]
    [InlineData("tear-depth full-thickness and (tear-length above earlier tear-length + 5 mm or thickness above 4 mm)", true)]
    [InlineData("tear-depth full-thickness and not (tear-length above earlier tear-length + 5 mm and thickness above 4 mm)", true)]
    [InlineData("tear-depth full-thickness and not (tear-length above earlier tear-length + 5 mm or thickness above 4 mm)", false)]
    [InlineData("tear-depth full-thickness and thickness above 4 mm", true)]
    public void A_rule_that_only_an_earlier_study_could_make_true_is_not_spoken_of_without_one(string condition, bool isSpokenOf)
    {
        var pack = ExamplePack.Plain.With("rules", ExamplePack.Plain.TextOf("rules").Replace("\n...", $"""

              - id: FOLLOW-001
                for: each cuff-tendon
                rule: {condition} → refer
                because: A case of this test.
                source: [trade]
            ...
            """, StringComparison.Ordinal));

        Assert.Equal(isSpokenOf, Undecided(pack, $"[{Torn}]", "FOLLOW-001") is not null);
        Assert.NotNull(Undecided(pack, $"[{Torn}]", "FOLLOW-001", """, "earlier": { "subjects": [] } """));
    }

    private static UndecidedRule? Undecided(ExamplePack pack, string subjects, string rule, string more = "") =>
        Read(pack, subjects, more).Unknown.FirstOrDefault(u => u.Rule.Id == rule);

    private static Reading Read(ExamplePack pack, string subjects, string more = "")
    {
        var answer = pack.Compile().Read(new SourceText("study.json", $$"""{ "study": "T-1", "subjects": {{subjects}} {{more}} }"""));
        Assert.True(answer.Reading is not null, string.Join('\n', answer.Messages.Select(m => $"{m.Code} {m.Text}")));
        return answer.Reading;
    }
}
