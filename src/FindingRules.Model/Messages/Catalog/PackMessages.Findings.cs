using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR13xx and FR14xx: findings of the vocabulary, wording, and accuracy of references.</summary>
public static partial class PackMessages
{
    public static Message NoOneType(Location at, string finding, IReadOnlyCollection<string> found,
        IReadOnlyCollection<string> types) =>
        Error(1301, at, found.Count == 0
                ? $"`{finding}` says nothing of its values; expected one of {Spelling.List(types)}"
                : $"`{finding}` has {Spelling.List(found, "and")}; expected one of them",
            "a finding is a choice, a sign, a measure or an extent");

    public static Message NormalIsNoValue(Location at, string finding, string found, IReadOnlyCollection<string> known) =>
        WithSpelling(Error(1302, at, $"`{found}` is not a value of `{finding}`, so it cannot be its normal one", null), found, known);

    public static Message UnknownUnit(Location at, string found, IReadOnlyCollection<string> known) =>
        Error(1304, at, $"`{found}` is not a unit; expected one of the closed list",
            Spelling.Help(found, known) ?? $"one of {Spelling.List(known)}");

    public static Message NegativePrecision(Location at, string finding, string found) =>
        Error(1306, at, $"the precision of `{finding}` is {found}; expected zero or more", "write how finely it can be measured");

    public static Message NormalNotPlausible(Location at, string finding) =>
        Error(1308, at, $"the normal range of `{finding}` reaches outside its plausible one; expected it to lie within",
            "widen `plausible`, or correct `normal`");

    public static Message AgeNotWhole(Location at, string fact) =>
        Error(1309, at,
            $"`{fact}` is an age and may be a fraction; expected `whole: true`, because a study says no more of a person than rules need",
            "add `whole: true`");

    public static Message PlausibleIsOpen(Location at, string finding) =>
        Error(1311, at, $"the plausible range of `{finding}` has no end on one side, or nothing in it; expected both ends",
            "write it as `0.5 mm to 30 mm`");

    public static Message AgeOfAStructure(Location at, string finding) =>
        Error(1312, at, $"`{finding}` is an age, and structures have none; expected it under `study:`", "move it there");

    public static Message BrokenPlace(Location at, string what) =>
        Error(1401, at, $"{what}; expected each place to fill in between `{{` and `}}`", "such as `{subject}` or `{, tear-length}`");

    public static Message PlaceWithoutName(Location at, string found, int names) =>
        Error(1402, at, $"`{found}` has {names} names to fill in; expected one", "such as `{subject}` or `{, tear-length}`");

    public static Message AccuracyNotWhole(Location at, string reference) =>
        Error(1411, at,
            $"the accuracy of `{reference}` is not in one whole form; expected sensitivity with specificity, or likelihood ratios, "
            + "or the four counts of a 2×2 table",
            "a probability is worked out from one form");

    public static Message NotAShare(Location at, string key) =>
        Error(1412, at, $"`{key}` is out of range; expected a share from 0 % to 100 %, or a likelihood ratio of zero or more", null);

    public static Message FigureOutsideInterval(Location at, string key) =>
        Error(1413, at, $"`{key}` does not hold the figure that it is the interval of; expected it to lie within",
            "correct one of the two");

    public static Message NotNumberOfPeople(Location at, string key, string found) =>
        Error(1414, at, $"`{found}` is not a number of people for `{key}`; expected digits, such as `48`", null);
}
