using FindingRules.Model.Explanations;
using FindingRules.Model.Truths;

namespace FindingRules.Explaining;

/// <summary>What one statement looked at, as one sentence.</summary>
internal sealed class LookText(Explanation explanation, string owner)
{
    public string Of(Look look)
    {
        if (look.Answer is { } key && explanation.Find(key) is { } answer) return Of(answer);
        if (look.Calculation is { } calculation) return Of(calculation, look);
        return string.Join("; ", look.Values.Select(Of));
    }

    private string Of(TopicAnswer answer)
    {
        var what = $"{answer.Title}{Whose(answer.SubjectTitle)}";
        var by = string.Join(", ", answer.Proven.Select(p => p.Rule).Distinct());
        return answer.Status switch
        {
            "published" => $"{what}: {answer.ValueTitle}, answered by {by}",
            "none" => $"no rule gives {what} an answer here",
            "conflict" => $"{what} is contradictory: {by} give different answers",
            "held" => $"{what} is withheld, by {Holders(answer)}",
            _ => $"{what} is still open; it waits for {Waiting(answer)}",
        };
    }

    private static string Holders(TopicAnswer answer) =>
        string.Join(", ", answer.Holders.Where(h => h.Standing == "stands").Select(h => h.Rule));

    private static string Waiting(TopicAnswer answer) => string.Join(", ", answer.Givers.Concat(answer.Holders)
        .Where(g => g.Standing is "unknown" or "open").Select(g => g.Rule).Distinct().DefaultIfEmpty("another rule"));

    private string Of(SeenValue value)
    {
        var what = $"{value.Title}{Whose(value.SubjectTitle)}";
        if (value.Finding == "structure")
            return value.Value is null ? $"nothing was sent of the {value.SubjectTitle}" : $"the {value.SubjectTitle} was assessed";
        return value.Origin switch
        {
            "sent" => $"{what}: {value.Value}{At(value.Place)}",
            "normal" => $"{what}: {value.Value}, because the {Without(value.SubjectTitle)} was sent as normal",
            "not-assessable" => $"{what} could not be assessed",
            _ => $"{what} was not sent",
        };
    }

    private string Of(Calculation calculation, Look look)
    {
        var unknown = look.Values.Where(v => v.Value is null).Select(Of).ToList();
        if (unknown.Count > 0) return string.Join("; ", unknown);
        var left = NumberText.Of(calculation.Left);
        var right = string.Join(" and ", calculation.Right.Select(NumberText.Of));
        var how = look.Truth switch
        {
            Truth.True => $"{left} is {calculation.Relation} {right}",
            Truth.False => $"{left} is not {calculation.Relation} {right}",
            _ => $"{left} may or may not be {calculation.Relation} {right}",
        };
        var places = string.Concat(look.Values.Select(v => v.Place).OfType<StudyPlace>().Distinct().Select(At));
        var normal = look.Values.Any(v => v.Origin == "normal") ? ", taken as normal" : "";
        return how + normal + Nearness(calculation) + places;
    }

    private static string Nearness(Calculation calculation)
    {
        if (calculation is not { Distance: { } distance, Threshold: { } threshold }) return "";
        var apart = distance.StartsWith("0 ", StringComparison.Ordinal) ? $"exactly at {threshold}" : $"{distance} from {threshold}";
        return calculation.IsWithinPrecision
            ? $"; {apart}, which is within the precision of measurement{(calculation.Precision is { } p ? $" ({p})" : "")}"
            : $"; {apart}";
    }

    private string Whose(string title) => title == owner || title == "study" ? "" : $" of the {title}";

    private static string Without(string title) => title.Split(" (lesion")[0];

    private static string At(StudyPlace? place) => place is null ? "" : $" [{place.Pointer}]";
}
