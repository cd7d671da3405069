using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR50xx, continued: findings and their values.</summary>
public static partial class StudyMessages
{
    /// <summary>FR5011: a finding that the structure does not have; <paramref name="elsewhere"/> says who has it.</summary>
    public static Message UnknownFinding(
        Location at, string structure, string found, string? elsewhere, IReadOnlyCollection<string> known)
    {
        var message = WithSpelling(Error(5011, at, $"`{structure}` has no finding called `{found}`", null), found, known);
        return message.Fix is null && elsewhere is not null ? message with { Label = elsewhere } : message;
    }

    public static Message UnknownFact(Location at, string found, string? elsewhere, IReadOnlyCollection<string> known)
    {
        var message = WithSpelling(Error(5012, at, $"the vocabulary has no study fact called `{found}`", null), found, known);
        return message.Fix is null && elsewhere is not null ? message with { Label = elsewhere } : message;
    }

    public static Message UnknownValue(Location at, string finding, string found, IReadOnlyCollection<string> known) =>
        WithSpelling(Error(5013, at, $"`{finding}` has no value `{found}`", null), found, known);

    public static Message NotASign(Location at, string finding, string found) =>
        Error(5014, at, $"`{finding}` is a sign and cannot be {found}; expected `present` or `absent`",
            "send `present`, `absent` or `not-assessable`");

    public static Message UnknownPoint(Location at, string finding, string axis, string found, IReadOnlyCollection<string> known) =>
        WithSpelling(Error(5015, at, $"`{finding}` lies along the {axis}, which has no point `{found}`", null), found, known);

    public static Message ExtentOrder(Location at, string from, string to) =>
        Error(5016, at, $"the stretch runs from `{from}` back to `{to}`; expected the order of the axis",
            $"send from `{to}` to `{from}`");

    public static Message ExtentOverlap(Location at, string finding, Location other) =>
        Error(5017, at, $"two stretches of `{finding}` meet or overlap; expected stretches with a point of the axis between them",
            "send them as one, `from` … `to`; separate defects at neighbouring points as two lesions") with
        {
            Related = [new(other, "the other one")],
        };

    public static Message NotAQuantity(Location at, string finding, string example) =>
        Error(5018, at, $"the value of `{finding}` is not a quantity; expected a plain number with a unit",
            $"write it as `{example}`, `<{example}` or `{example} to {example}`");

    public static Message NoUnit(Location at, string finding, string number, string unit) =>
        Error(5019, at, $"`{finding}` is a number without a unit; expected one such as `{unit}`", $"did you mean `{number} {unit}`?");

    public static Message UnknownUnit(Location at, string finding, string found, IReadOnlyCollection<string> known) =>
        WithSpelling(Error(5020, at, $"`{found}` is not a unit of `{finding}`", null), found, known);

    public static Message WrongDimension(Location at, string finding, string found, string foundTitle, string expectedTitle,
        string units) =>
        Error(5021, at, $"`{finding}` is {expectedTitle}, and `{found}` is {foundTitle}; expected {units}", $"send it in {units}");

    public static Message TooManyDigits(Location at, string finding, int most) =>
        Error(5022, at, $"the value of `{finding}` has more digits than anything is measured with; the most is {most}",
            "send the digits that were measured");

    public static Message Implausible(Location at, string finding, string shown, string plausible, string? slip, bool isText) =>
        Error(5023, at, $"{shown} is outside what `{finding}` may be; expected {plausible}",
            slip is null ? "check the number and its unit" : $"mm for cm, or a point lost? did you mean `{slip}`?") with
        {
            Fix = slip is null || !isText ? null : new Fix($"replace it by `{slip}`", WithoutQuotes(at), slip),
        };

    public static Message FreeText(Location at, string finding) =>
        Error(5031, at, $"`{finding}` was sent as free text; expected one of its values, and nothing a person wrote by hand",
            "send the code of the value");

    public static Message AgeTooFine(Location at, string finding) =>
        Error(5032, at, $"`{finding}` is finer than rules need; expected whole years, or whole months below 24",
            "send the age in years");

    public static Message NotWhole(Location at, string finding, string unit) =>
        Error(5033, at, $"`{finding}` is a whole number of {unit}; expected no fraction", "round it");

    public static Message UnknownComparator(Location at, string found) =>
        Error(5034, at, $"`{found}` is not a comparator; expected `<`, `<=`, `>=` or `>`", "leave it out for a measured number");

    public static Message BackwardRange(Location at, string finding) =>
        Error(5037, at, $"the range of `{finding}` runs backwards; expected the smaller quantity first", "turn it round");
}
