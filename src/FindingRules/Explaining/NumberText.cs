using FindingRules.Model.Explanations;

namespace FindingRules.Explaining;

/// <summary>A quantity with its value and, where it was worked out, the numbers that it came from.</summary>
internal static class NumberText
{
    public static string Of(WorkedOut part) => part.Sort switch
    {
        "number" => part.Value ?? part.Words,
        "measure" => $"{part.Title} {part.Value}",
        "derived" => $"{part.Title} {part.Value} (from {Sum(part.From[0])})",
        _ => $"{Sum(part)} = {part.Value}",
    };

    private static string Sum(WorkedOut part) => IsOperation(part)
        ? $"{Operand(part.From[0], IsProduct(part) && IsSum(part.From[0]))} {part.Sort} "
            + Operand(part.From[1], IsOperation(part.From[1]) && (IsProduct(part) || IsSum(part.From[1])))
        : Of(part);

    private static string Operand(WorkedOut part, bool isBracketed) => isBracketed ? $"({Sum(part)})" : Sum(part);

    private static bool IsOperation(WorkedOut part) => IsSum(part) || IsProduct(part);

    private static bool IsSum(WorkedOut part) => part.Sort is "+" or "-";

    private static bool IsProduct(WorkedOut part) => part.Sort is "*" or "/";
}
