using System.Text.Json.Nodes;
using FindingRules.Explaining;
using FindingRules.Model.Explanations;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Explaining;

/// <summary>Questions asked of studies against the example pack.</summary>
internal static class Explained
{
    public const string FullThickness = """
        { "study": "S-1",
          "protocols": [{ "protocol": "shoulder", "side": "right" }],
          "facts": { "arm-position": "modified-crass" },
          "subjects": [
            { "structure": "supraspinatus", "side": "right",
              "findings": { "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists", "tear-length": "29.5 mm" } },
            { "structure": "biceps", "side": "right", "findings": { "position": "subluxed" } } ] }
        """;

    public static CompiledPack Example { get; } = ExamplePack.Plain.Compile();

    public static Explanation Ask(string study, Question question, CompiledPack? pack = null)
    {
        var answer = (pack ?? Example).Explain(new SourceText("study.json", study), question);
        Assert.True(answer.Explanation is not null, string.Join('\n', answer.Messages.Select(m => $"{m.Code} {m.Text}")));
        return answer.Explanation;
    }

    public static Explanation Trace(string study) => Ask(study, new Question(QuestionSort.Trace));

    public static string Text(Explanation explanation, QuestionSort sort = QuestionSort.Trace)
    {
        using var text = new StringWriter { NewLine = "\n" };
        ExplanationText.Write(text, explanation, sort);
        return text.ToString();
    }

    public static JsonNode Json(Explanation explanation) => JsonNode.Parse(ExplanationJson.ToBytes(explanation).Span)!;
}
