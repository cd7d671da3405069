using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR35xx: what one file of a pack says of another, and how rules hang together.</summary>
public static partial class LinkMessages
{
    public static Message UnknownReference(Location at, string found, IReadOnlyCollection<string> known) =>
        Unknown(3501, at, $"the pack has no reference called `{found}`", found, known);

    public static Message UnknownKind(Location at, string found, IReadOnlyCollection<string> known) =>
        Unknown(3502, at, $"the vocabulary has no kind called `{found}`", found, known);

    /// <param name="path">Such as `a` → `b` → `a`, in backticks.</param>
    public static Message KindCycle(Location at, string path) =>
        Error(3503, at, $"these kinds are like each other in a circle: {path}; expected each to be like a more general one",
            "take one `like:` out");

    public static Message UnknownAxis(Location at, string found, IReadOnlyCollection<string> known) =>
        Unknown(3504, at, $"the vocabulary has no axis called `{found}`", found, known);

    public static Message Redeclared(Location at, string finding, string kind, string ancestor, Location first) =>
        Error(3505, at, $"`{kind}` declares `{finding}` again, which it has from `{ancestor}`; expected each finding once",
            "take it out here, or give it another name") with
        {
            Related = [new(first, "declared here")],
        };

    public static Message UnknownStructure(Location at, string found, IReadOnlyCollection<string> known) =>
        Unknown(3506, at, $"the vocabulary has no structure called `{found}`", found, known);

    public static Message UnknownFindingOf(Location at, string structure, string found, IReadOnlyCollection<string> known) =>
        Unknown(3507, at, $"`{structure}` has no finding called `{found}`", found, known);

    /// <param name="where">Such as "`over`".</param>
    public static Message UnknownRule(Location at, string where, string found, IReadOnlyCollection<string> known) =>
        Unknown(3508, at, $"{where} names the rule `{found}`, which the pack does not have", found, known);

    public static Message OverApart(Location at, string rule, string ruleScope, string target, string targetScope) =>
        Error(3509, at, $"`{target}` is for {targetScope} and `{rule}` for {ruleScope}; expected rules that can meet on one subject",
            "a rule yields only where both are true of the same subject");

    public static Message OverOtherGrain(Location at, string rule, string target, bool isPerStructure) => isPerStructure
        ? Error(3510, at, $"`{rule}` answers for a structure as a whole and `{target}` for each lesion; expected both of one sort",
            "put both under topics with, or both without, `per: structure`")
        : Error(3510, at, $"`{rule}` answers for each lesion and `{target}` for a structure as a whole; expected both of one sort",
            "put both under topics with, or both without, `per: structure`");

    public static Message OverCycle(Location at, string path) =>
        Error(3511, at, $"these rules yield to each other in a circle: {path}; expected one that does not yield",
            "take one `over:` out");

    public static Message LayerCycle(Location at, string path) =>
        Error(3512, at, $"these wait for each other in a circle: {path}; expected a rule that can be decided first",
            "let one of the rules test findings instead of the topic");

    public static Message MixedGrain(Location at, string rule, string perStructure, string perLesion) =>
        Error(3513, at,
            $"`{rule}` answers `{perStructure}` per structure and `{perLesion}` per lesion; expected topics of one sort",
            "make two rules of it");

    public static Message NameTaken(Location at, string what, string name, string otherWhat, Location other) =>
        Error(3515, at, $"`{name}` is the name of a {what} and of a {otherWhat}; expected a name with one meaning",
            "rename one of the two") with
        {
            Related = [new(other, $"the {otherWhat}")],
        };

    public static Message PerStructureOfStudy(Location at, string name) =>
        Error(3516, at,
            $"`{name}` is for the study, which has no structures to answer for; expected `per:` only with `for: each …`",
            "take `per:` out");

    public static Message DerivedCycle(Location at, string path) =>
        Error(3517, at,
            $"these measures are worked out from each other in a circle: {path}; expected one that rests on findings alone",
            "work one of them out from findings");

    public static Message DerivedUnit(Location at, string measure, string unit, string expected, string found) =>
        Error(3518, at, $"`{measure}` is given in `{unit}`, which is {expected}; what it is worked out from is {found}",
            "correct `unit`, or the expression");

    public static Message ShownToNothing(Location at, string measure, string found) =>
        Error(3524, at, $"`{measure}` is shown to {found}; expected more than zero", "write how finely it is to be shown, such as 0.1 mm");

    private static Message Unknown(int number, Location at, string text, string found, IReadOnlyCollection<string> known)
    {
        var closest = Spelling.Closest(found, known);
        return Error(number, at, text, Spelling.Help(found, known)) with
        {
            Fix = closest is null ? null : new Fix($"replace it by `{closest}`", at, closest),
        };
    }

    private static Message Error(int number, Location at, string text, string? label) =>
        new(number, Severity.Error, at, text) { Label = label };
}
