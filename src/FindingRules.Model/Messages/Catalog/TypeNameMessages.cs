using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>
/// FR32xx: what can be said of a choice, a sign, a measure, an extent, a topic. <c>type</c> is such a word with its article.
/// </summary>
public static class TypeNameMessages
{
    public static Message SaysNothingAlone(Location at, string name, string type, string canSay) =>
        new(3201, Severity.Error, at, $"`{name}` is {type} and says nothing alone") { Label = canSay };

    public static Message HasNoValues(Location at, string name, string type, string value, string canSay, string? replacement) =>
        new(3202, Severity.Error, at, $"`{name}` is {type} and has no value `{value}`")
        {
            Label = canSay,
            Fix = replacement is null ? null : new Fix($"write `{replacement}`", at, replacement),
        };

    public static Message NotAMeasure(Location at, string name, string type, string canSay) =>
        new(3203, Severity.Error, at, $"`{name}` is {type}, and a measure is expected") { Label = canSay };

    public static Message NotAnExtent(Location at, string name, string type, string relation, string canSay) =>
        new(3204, Severity.Error, at, $"`{name}` is {type}, and `{relation}` speaks of extents") { Label = canSay };

    public static Message NotASign(Location at, string name, string type, string canSay, string? replacement) =>
        new(3205, Severity.Error, at, $"`{name}` is {type}, and `no` speaks of signs")
        {
            Label = canSay,
            Fix = replacement is null ? null : new Fix($"write `{replacement}`", at, replacement),
        };

    public static Message NotAssessed(Location at, string name, string type) =>
        new(3206, Severity.Error, at, $"`{name}` is {type}, and only findings and structures are assessed")
        {
            Label = "name the findings it rests on",
        };

    public static Message UnknownPoint(Location at, string finding, string found, IReadOnlyCollection<string> points) =>
        NameMessages.Suggesting(new(3207, Severity.Error, at, $"`{finding}` has no point `{found}`"), found, points);

    public static Message WrongAxis(Location at, string finding, string axis, string found) =>
        new(3208, Severity.Error, at, $"`{finding}` lies along `{axis}`, found `{found}`")
        {
            Label = $"write `{axis}` or leave it out",
            Fix = new Fix($"write `{axis}`", at, axis),
        };

    public static Message PointsOutOfOrder(Location at, string from, string to, IReadOnlyCollection<string> points) =>
        new(3209, Severity.Error, at, $"`{from}` to `{to}` runs against the order of the axis")
        {
            Label = $"the order is {Spelling.List(points, "and then")}: write `{to} to {from}`",
            Fix = new Fix($"write `{to} to {from}`", at, $"{to} to {from}"),
        };
}
