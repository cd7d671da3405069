using System.Collections.Immutable;
using FindingRules.Model.Explanations;

namespace FindingRules.Explaining;

/// <summary>A quantity with its value and, where it was worked out, the numbers that it came from.</summary>
/// <param name="values">What was looked up for it: these have titles, where the rule has names.</param>
internal sealed class NumberText(ImmutableArray<SeenValue> values)
{
    public string Of(WorkedOut part) => part.Sort switch
    {
        "number" => part.Value ?? part.Words,
        "measure" => $"{Title(part.Words)} {part.Value}",
        "derived" => $"{part.Words.Replace('-', ' ')} {part.Value} (from {Sum(part.From[0])})",
        _ => $"{Sum(part)} = {part.Value}",
    };

    private string Sum(WorkedOut part) => IsOperation(part)
        ? $"{Operand(part.From[0], IsProduct(part) && IsSum(part.From[0]))} {part.Sort} "
            + Operand(part.From[1], IsOperation(part.From[1]) && (IsProduct(part) || IsSum(part.From[1])))
        : Of(part);

    private string Operand(WorkedOut part, bool isBracketed) => isBracketed ? $"({Sum(part)})" : Sum(part);

    /// <summary>The words that say whose stay as they are.</summary>
    private string Title(string words)
    {
        var name = words[(words.LastIndexOf(' ') + 1)..];
        var title = values.FirstOrDefault(v => v.Finding == name)?.Title ?? name.Replace('-', ' ');
        return words[..^name.Length] + title;
    }

    private static bool IsOperation(WorkedOut part) => IsSum(part) || IsProduct(part);

    private static bool IsSum(WorkedOut part) => part.Sort is "+" or "-";

    private static bool IsProduct(WorkedOut part) => part.Sort is "*" or "/";
}
