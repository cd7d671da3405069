using System.Collections.Immutable;
using FindingRules.Cases;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;

namespace FindingRules.Tests.FrontDoor;

public sealed class CaseComparisonTests
{
    private static readonly Location Here = new SourceText("cases.yaml", "cases:\n").Whole;

    [Theory]
    [InlineData(Truth.True, Standing.Stands, true, false, false, false)]
    [InlineData(Truth.False, Standing.False, false, true, false, false)]
    [InlineData(Truth.Unknown, Standing.Unknown, false, false, true, false)]
    [InlineData(Truth.True, Standing.Open, false, false, true, false)]
    [InlineData(Truth.True, Standing.Yields, false, false, false, true)]
    [InlineData(Truth.Unknown, Standing.Yields, false, false, false, false)]
    public void A_rule_meets_the_expectation_of_its_standing(
        Truth truth, Standing standing, bool fires, bool silent, bool unknown, bool yields)
    {
        var outcome = Outcome(truth, standing);
        Assert.Equal(fires, Passes(outcome, new CaseExpectation { Fires = [Named("R-1")] }));
        Assert.Equal(silent, Passes(outcome, new CaseExpectation { Silent = [Named("R-1")] }));
        Assert.Equal(unknown, Passes(outcome, new CaseExpectation { Unknown = [Named("R-1")] }));
        Assert.Equal(yields, Passes(outcome, new CaseExpectation { Yields = [Named("R-1")] }));
    }

    [Fact]
    public void What_became_of_a_rule_is_said()
    {
        var message = Assert.Single(Compare(Outcome(Truth.Unknown, Standing.Unknown), new CaseExpectation { Fires = [Named("R-1")] }));
        Assert.Equal("`CASE-1` expects `R-1` to fire; it is unknown of study", message.Text);
    }

    [Fact]
    public void A_rule_that_speaks_of_nothing_in_the_study_is_silent_and_does_not_fire()
    {
        var nothing = new Outcome([], []);
        Assert.True(Passes(nothing, new CaseExpectation { Silent = [Named("R-1")] }));
        var message = Assert.Single(Compare(nothing, new CaseExpectation { Fires = [Named("R-1")] }));
        Assert.EndsWith("the study has nothing that it speaks of", message.Text, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> WholeLists => new()
    {
        { "concludes", "right supraspinatus tear-depth full-thickness" },
        { "held", "left supraspinatus tear-depth" },
        { "conflicts", "left infraspinatus tear-depth" },
        { "next", "evaluate right subscapularis" },
        { "done", "ultrasound" },
        { "cautions", "position-overestimates" },
        { "borderline", "tear-size.medium" },
        { "probabilities", "study 2.3 %" },
    };

    [Theory]
    [MemberData(nameof(WholeLists))]
    public void A_list_is_the_whole_of_what_may_come(string list, string comes)
    {
        Assert.Empty(Compare(SampleReading.Full, Expect(list, comes)));
        Assert.Equal(["FR4003"], Codes(SampleReading.Full, Expect(list)));
        Assert.Equal(["FR4002"], Codes(SampleReading.Full, Expect(list, comes, "something else")));
        Assert.Equal(["FR4002"], Codes(SampleReading.Empty, Expect(list, comes)));
        Assert.Empty(Compare(SampleReading.Empty, Expect(list)));
    }

    [Fact]
    public void What_is_asked_next_need_only_be_among_what_comes()
    {
        Assert.Empty(Compare(SampleReading.Full, new CaseExpectation { Asks = [Named("right biceps thickness")] }));
        Assert.Empty(Compare(SampleReading.Full, new CaseExpectation { Asks = [] }));
        Assert.Equal(["FR4002"], Codes(SampleReading.Empty, new CaseExpectation { Asks = [Named("right biceps thickness")] }));
    }

    [Fact]
    public void Nothing_is_demanded_of_a_list_that_is_left_out() => Assert.Empty(Compare(SampleReading.Full, new CaseExpectation()));

    [Fact]
    public void What_came_too_much_names_the_rules_behind_it()
    {
        var message = Assert.Single(Compare(SampleReading.Full, Expect("cautions")));
        Assert.Equal("it comes from `CUFF-040`", message.Label);
    }

    [Theory]
    [InlineData("No rule of this pack applies.", null)]
    [InlineData("No rule of this pack applies.\r\n", null)]
    [InlineData("No rule applies.", "expected is `No rule applies.`, what came is `No rule of this pack applies.`")]
    [InlineData("No rule of this pack applies.\nMore.", "what did not come: `More.`")]
    [InlineData("", "what came as well: `No rule of this pack applies.`")]
    public void The_impression_is_compared_without_the_notice(string expected, string? label) =>
        Assert.Equal(label, Compare(SampleReading.Empty, new CaseExpectation { Impression = expected }).SingleOrDefault()?.Label);

    private static CaseExpectation Expect(string list, params string[] texts)
    {
        ImmutableArray<Expected> all = [.. texts.Select(Named)];
        return list switch
        {
            "concludes" => new CaseExpectation { Concludes = all },
            "held" => new CaseExpectation { Held = all },
            "conflicts" => new CaseExpectation { Conflicts = all },
            "next" => new CaseExpectation { Next = all },
            "done" => new CaseExpectation { Done = all },
            "cautions" => new CaseExpectation { Cautions = all },
            "borderline" => new CaseExpectation { Borderline = all },
            "probabilities" => new CaseExpectation { Probabilities = all },
            _ => throw new ArgumentOutOfRangeException(nameof(list)),
        };
    }

    private static Expected Named(string text) => new(text, Here);

    private static bool Passes(Outcome outcome, CaseExpectation expect) => Compare(outcome, expect).Count == 0;

    private static string[] Codes(Reading reading, CaseExpectation expect) => [.. Compare(reading, expect).Select(m => m.Code)];

    private static List<Message> Compare(Reading reading, CaseExpectation expect) =>
        [.. CaseComparison.Of(CaseOf(expect), new Outcome([], []), reading)];

    private static List<Message> Compare(Outcome outcome, CaseExpectation expect) =>
        [.. CaseComparison.Of(CaseOf(expect), outcome, SampleReading.Empty)];

    private static Case CaseOf(CaseExpectation expect) =>
        new("CASE-1", "An example.", new Study { Key = "CASE-1", Location = Here }, expect, Here);

    private static Outcome Outcome(Truth truth, Standing standing)
    {
        var rule = new Rule("R-1", Scope.Study, new AllOf([], Here), [], Here) { Text = "", Because = "", Revision = "" };
        return new Outcome([new RuleOutcome(rule, Subject.Study, truth, truth, standing)], []);
    }
}
