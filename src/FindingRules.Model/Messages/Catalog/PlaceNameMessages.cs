using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR31xx: whose finding is meant: sides, other structures, the earlier study, quantifiers.</summary>
public static class PlaceNameMessages
{
    public static Message NeedsSide(Location at, string structure) =>
        new(3101, Severity.Error, at, $"`{structure}` is there on both sides, and which one is meant is not said")
        {
            Label = $"write `ipsilateral {structure}` or `contralateral {structure}`",
            Fix = new Fix($"write `ipsilateral {structure}`", at, $"ipsilateral {structure}"),
        };

    /// <summary><paramref name="quantified"/>: the whole statement, said of any of them.</summary>
    public static Message NeedsQuantifier(Location at, Location statement, string structure, string scope, string quantified) =>
        new(3102, Severity.Error, at, $"`{structure}` needs a quantifier, because a rule for `{scope}` has no side")
        {
            Label = $"write `{quantified}`",
            Fix = new Fix($"write `{quantified}`", statement, quantified),
        };

    public static Message NoOtherSide(Location at, string structure) =>
        new(3103, Severity.Error, at, $"`{structure}` is not paired, so it has no other side")
        {
            Label = "leave out `contralateral`",
        };

    public static Message NoSide(Location at, string relation, string scope) =>
        new(3104, Severity.Error, at, $"a rule for `{scope}` has no side, so nothing is `{relation}` to it")
        {
            Label = "count the structures instead: `any … where (…)`",
        };

    public static Message KindOfSeveral(Location at, string kind, int count) =>
        new(3105, Severity.Error, at, $"`{kind}` is the kind of {count} structures, and which one is meant is not said")
        {
            Label = $"write `any {kind} where (…)`, or name one structure",
        };

    public static Message StudyWithSide(Location at, string relation) =>
        new(3106, Severity.Error, at, $"facts of the study have no side, found `{relation}` beside `study`")
        {
            Label = $"leave out `{relation}` or `study`",
        };

    public static Message SideWithoutStructure(Location at, string found) =>
        new(3107, Severity.Error, at, $"`ipsilateral` expects a structure, found `{found}`")
        {
            Label = "the subject's own findings need no word before them",
        };

    public static Message EarlierTopic(Location at, string topic) =>
        new(3108, Severity.Error, at, $"`{topic}` is a topic, and `earlier` speaks of findings only");

    public static Message PrefixTwice(Location at, string found, string before) =>
        new(3109, Severity.Error, at, $"`{found}` cannot follow `{before}`")
        {
            Label = "say each of `earlier` and the side once",
        };

    public static Message CountOutOfRange(Location at, string count, string range, int most) =>
        new(3110, Severity.Error, at, $"`at least {count}` of `{range}` says nothing, because there are {most}")
        {
            Label = $"write a whole number from 1 to {most}",
        };

    public static Message CountsTooDeep(Location at, int most) =>
        new(3111, Severity.Error, at, $"more than {most} of `any`, `every`, `no` and `at least` stand inside each other")
        {
            Label = "let a topic carry the inner part",
        };
}
