using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR34xx: what follows from a rule.</summary>
public static class ConclusionNameMessages
{
    public static Message Unknown(Location at, string found, IReadOnlyCollection<string> names) =>
        NameMessages.Suggesting(
            new(3401, Severity.Error, at, $"`{found}` is no value of a topic, next step or caution"), found, names);

    public static Message Ambiguous(Location at, string found, IReadOnlyCollection<string> ways) =>
        new(3402, Severity.Error, at, $"`{found}` has {ways.Count} meanings")
        {
            Label = $"write {Spelling.List(ways)}",
        };

    public static Message TopicOfOthers(Location at, string topic, string its, string scope) =>
        new(3403, Severity.Error, at, $"topic `{topic}` is answered for `{its}`, and this rule is for `{scope}`");

    public static Message NoEvaluateStep(Location at, string structure, IReadOnlyCollection<string> known) =>
        new(3404, Severity.Error, at, $"`{structure}` has no entry under `evaluate` in the next steps")
        {
            Label = known.Count is > 0 and <= 6 ? $"there are {Spelling.List(known, "and")}" : "add one that says what completes it",
        };

    public static Message EvaluateNeedsSide(Location at, string structure, string scope) =>
        new(3405, Severity.Error, at, $"`{structure}` is paired, and a rule for `{scope}` has no side to evaluate")
        {
            Label = "write the rule for each structure that asks for it, or name a next step",
        };

    public static Message UnknownTopic(Location at, string found, IReadOnlyCollection<string> topics) =>
        NameMessages.Suggesting(new(3406, Severity.Error, at, $"there is no topic called `{found}`"), found, topics);

    public static Message TopicWithoutValue(Location at, string topic, IReadOnlyCollection<string> values) =>
        new(3407, Severity.Error, at, $"`{topic}` is a topic, and what it is answered with is not said")
        {
            Label = $"write `{topic}` with one of {Spelling.List(values)}",
        };

    public static Message SaidTwice(Location at, Location before, string what) =>
        new(3408, Severity.Error, at, $"`{what}` follows twice")
        {
            Related = [new RelatedPlace(before, "said here already")],
        };

    public static Message TwoValues(Location at, Location before, string topic, string one, string other) =>
        new(3409, Severity.Error, at, $"`{topic}` has one answer for a subject, found `{one}` and `{other}`")
        {
            Related = [new RelatedPlace(before, "answered here already")],
        };

    public static Message HoldsAndAnswers(Location at, Location before, string topic) =>
        new(3410, Severity.Error, at, $"one rule cannot both answer and hold `{topic}`")
        {
            Related = [new RelatedPlace(before, "the other one")],
        };

    public static Message UnknownStep(Location at, string found, IReadOnlyCollection<string> steps) =>
        NameMessages.Suggesting(new(3411, Severity.Error, at, $"there is no next step called `{found}`"), found, steps);

    public static Message EvaluateKind(Location at, string kind, IReadOnlyCollection<string> structures) =>
        new(3413, Severity.Error, at, $"`{kind}` is a kind, and one structure is evaluated at a time")
        {
            Label = structures.Count is > 0 and <= 6 ? $"write `evaluate` with one of {Spelling.List(structures)}" : "name a structure",
        };

    public static Message StructureAlone(Location at, string structure) =>
        new(3414, Severity.Error, at, $"`{structure}` is a structure, and what to do with it is not said")
        {
            Label = $"write `evaluate {structure}`",
            Fix = new Fix($"write `evaluate {structure}`", at, $"evaluate {structure}"),
        };

    public static Message UnknownCaution(Location at, string found, IReadOnlyCollection<string> cautions) =>
        NameMessages.Suggesting(new(3412, Severity.Error, at, $"there is no caution called `{found}`"), found, cautions);

    public static Message UnknownReference(Location at, string found, IReadOnlyCollection<string> references) =>
        NameMessages.Suggesting(new(3421, Severity.Error, at, $"there is no reference called `{found}`"), found, references);

    public static Message ReferenceWithoutAccuracy(Location at, string reference) =>
        new(3422, Severity.Error, at, $"reference `{reference}` carries no accuracy to work a probability out from")
        {
            Label = "give the reference `accuracy`, or name one that has it",
        };

    public static Message NeitherPositiveNorNegative(Location at, string found) =>
        new(3423, Severity.Error, at, $"found `{found}`, expected `positive` or `negative`");

    public static Message NoProbability(Location at, string found, string dimension) =>
        new(3424, Severity.Error, at, $"`{found}` is {dimension}, and a probability is a share")
        {
            Label = "use a measure in %, or write one such as `10 %`",
        };
}
