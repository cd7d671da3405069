using System.Diagnostics;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Schemas;

/// <summary>The values that a finding may be sent with.</summary>
internal static class FindingPart
{
    private static readonly string[] Comparators = ["<", "<=", ">=", ">"];

    public static JsonObject All(string description, IEnumerable<Finding> findings) => Part.Object(
        description,
        new JsonObject(findings.Select(f => KeyValuePair.Create<string, JsonNode?>(f.Name, Of(f)))));

    private static JsonObject Of(Finding finding)
    {
        var part = finding.Type switch
        {
            ChoiceType choice => Part.Words(About(finding), choice.Values.Append(NotAssessableValue.Word).Distinct()),
            SignType => Sign(finding),
            MeasureType measure => Measure(finding, measure),
            ExtentType extent => Extent(finding, extent.Axis),
            _ => throw new UnreachableException(),
        };
        part.Insert(0, "title", finding.Title);
        return part;
    }

    private static JsonObject Sign(Finding finding) => new()
    {
        ["description"] = About(finding),
        ["enum"] = new JsonArray("present", "absent", true, false, NotAssessableValue.Word),
    };

    private static JsonObject Measure(Finding finding, MeasureType type)
    {
        var units = Unit.All.Where(u => u.Dimension == type.Unit.Dimension).SelectMany(u => new[] { u.Name, u.Ucum }).Distinct().ToArray();
        var number = type.IsWhole ? "-?[0-9]+" : @"-?[0-9]+(\.[0-9]+)?";
        var numeric = type.IsWhole ? "integer" : "number";
        // A plain number has no unit to say; everything else must say it.
        var isPlain = type.Unit == Unit.Plain;
        var quantity = $"{number}( ?({string.Join('|', units.Select(Regex.Escape))})){(isPlain ? "?" : "")}";
        var parts = Part.Object("A number with its unit.", new JsonObject
        {
            ["value"] = new JsonObject
            {
                ["description"] = "The number, or its digits as text.",
                ["type"] = Part.Strings([numeric, "string"]),
                ["pattern"] = $"^{number}$",
            },
            ["unit"] = Part.Words("Its unit.", units),
            ["comparator"] = Part.Words("Where only a bound is known.", Comparators),
        }, isPlain ? ["value"] : ["value", "unit"]);
        var text = Part.Text("A quantity, a bound or a range.", $"^((<|<=|≤|>|>=|≥) ?)?{quantity}$|^{quantity} to {quantity}$");
        JsonObject[] forms = isPlain ? [text, parts, new JsonObject { ["type"] = numeric }] : [text, parts];
        return Either($"{About(finding)} Plausible: {Range(type)}.", forms);
    }

    private static JsonObject Extent(Finding finding, Axis axis)
    {
        var points = Part.Words("One point.", axis.Points);
        var stretch = Part.Object("From one point to another, both included.", new JsonObject
        {
            ["from"] = Part.Words("Where it begins.", axis.Points),
            ["to"] = Part.Words("Where it ends.", axis.Points),
        }, "from", "to");
        var several = Part.List("Several stretches that do not meet.", new JsonObject
        {
            ["anyOf"] = new JsonArray(points.DeepClone(), stretch.DeepClone()),
        });
        several["minItems"] = 1;
        return Either(About(finding), points, Part.Const("none", "It reaches nothing."), stretch, several);
    }

    private static JsonObject Either(string description, params JsonObject[] forms) => new()
    {
        ["description"] = description,
        ["anyOf"] = new JsonArray([.. forms, Part.Const(NotAssessableValue.Word, "It could not be judged.")]),
    };

    private static string Range(MeasureType type)
    {
        var low = type.Plausible.Low is { } l ? Quantity.FromBase(l, type.Unit).ToString() : null;
        var high = type.Plausible.High is { } h ? Quantity.FromBase(h, type.Unit).ToString() : null;
        return low is null ? $"at most {high}" : high is null ? $"at least {low}" : $"{low} to {high}";
    }

    private static string About(Finding finding) => finding.About ?? $"{finding.Title}.";
}
