using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR33xx: units and dimensions. A dimension is named as a person says it: "a length".</summary>
public static class UnitNameMessages
{
    /// <summary><paramref name="other"/>: the words it is compared with.</summary>
    public static Message NumberWithoutUnit(Location at, string number, string other, string unit) =>
        new(3301, Severity.Error, at, $"`{number}` has no unit, and `{other}` is given in `{unit}`")
        {
            Label = $"write `{number} {unit}`",
            Fix = new Fix($"write `{number} {unit}`", at, $"{number} {unit}"),
        };

    /// <summary>A small bare number against a share: 0.5 may be half of it or half a percent.</summary>
    public static Message ShareWithoutUnit(Location at, string number, string other, string asPercent, string asShare) =>
        new(3302, Severity.Error, at, $"`{number}` has no unit, and `{other}` is given in `%`")
        {
            Label = asPercent == asShare ? $"write `{asPercent}`" : $"write `{asShare}` or `{asPercent}`",
        };

    public static Message OtherDimension(Location at, string left, string leftIs, string right, string rightIs) =>
        new(3303, Severity.Error, at, $"`{left}` is {leftIs} and `{right}` is {rightIs}")
        {
            Label = "only quantities of one sort can be compared, added or taken away",
        };

    public static Message UnknownUnit(Location at, string found, IReadOnlyCollection<string> units, IReadOnlyCollection<string> measures)
    {
        var message = NameMessages.Suggesting(
            new(3304, Severity.Error, at, $"`{found}` is neither a unit nor a measure"), found, [.. units, .. measures]);
        return message with { Label = message.Label ?? $"the units are {Spelling.List(units, "and")}" };
    }

    public static Message DividesByZero(Location at, string written) =>
        new(3305, Severity.Error, at, $"`{written}` divides by zero and would never be known");

    public static Message EmptyRange(Location at, string written) =>
        new(3306, Severity.Error, at, $"nothing lies in `{written}`")
        {
            Label = "the lower end comes first",
        };

    public static Message WrongUnit(Location at, string written, string isA, string unit, string expected) =>
        new(3307, Severity.Error, at, $"`{written}` is {isA}, and {expected} is expected")
        {
            Label = $"give it in `{unit}`",
        };

    /// <summary><paramref name="mended"/>: the number with its unit, where nothing else can have been meant.</summary>
    public static Message UnitMissing(Location at, string number, string unit, string? mended) =>
        new(3308, Severity.Error, at, $"`{number}` has no unit, and a quantity in `{unit}` is expected")
        {
            Label = mended is null ? $"give it in `{unit}`" : $"write `{mended}`",
            Fix = mended is null ? null : new Fix($"write `{mended}`", at, mended),
        };
}
