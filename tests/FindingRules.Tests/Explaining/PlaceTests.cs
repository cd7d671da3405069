using System.Text.Json.Nodes;
using FindingRules.Explaining;
using FindingRules.Model.Explanations;
using FindingRules.Tests.Schemas;
using Xunit;

namespace FindingRules.Tests.Explaining;

/// <summary>Where the study says it: the place named is that of the finding and the subject named, and of no other.</summary>
public sealed class PlaceTests
{
    public static TheoryData<string> Folders() => [.. ExampleStudies.PackFolders];

    [Theory]
    [MemberData(nameof(Folders))]
    public void Each_place_in_a_study_is_that_of_the_finding_it_stands_for(string folder)
    {
        var pack = ExampleStudies.Load(folder);
        var seen = 0;
        foreach (var (name, study) in ExampleStudies.Of(folder))
        {
            var trace = Explained.Ask(study.ToJsonString(), new Question(QuestionSort.Trace), pack);
            foreach (var value in trace.Proofs.SelectMany(p => Values(p.Condition)).Where(v => v.Place is not null))
            {
                var wrong = Wrong(study, value);
                Assert.True(wrong is null, $"{name}: {value.Finding} of {value.Subject} at {value.Place!.Pointer}: {wrong}");
                seen++;
            }
        }
        Assert.NotEqual(0, seen);
    }

    [Fact]
    public void Two_signs_that_are_both_present_have_a_place_each()
    {
        var study = """
            { "study": "S-1", "facts": { "surgery-planned": true }, "subjects": [
              { "structure": "supraspinatus", "side": "right", "findings": { "symptomatic": "present", "thickened": true } } ] }
            """;
        var pack = ExampleStudies.Load("rules/msk-ultrasound");
        var why = Explained.Ask(study, new Question(QuestionSort.Why, "TEND-010"), pack);
        var places = Values(why.Proofs[0].Condition).Where(v => v.Finding == "thickened").Select(v => v.Place!.Pointer).Distinct();
        Assert.Equal(["/subjects/0/findings/thickened"], places);
    }

    /// <summary>Null where the pointer leads to the finding of the subject, at its own lesion or at its structure.</summary>
    private static string? Wrong(JsonObject study, SeenValue value)
    {
        var steps = value.Place!.Pointer.Split('/')[1..];
        if (steps[^1] != value.Finding) return "another finding";
        if (steps[0] == "earlier" != value.Subject.StartsWith("earlier ", StringComparison.Ordinal)) return "another study";
        var words = value.Subject.Replace("earlier ", "", StringComparison.Ordinal);
        var rest = steps[0] == "earlier" ? steps[1..] : steps;
        if (rest[0] == "facts") return words == "study" ? null : "a fact";
        var root = steps[0] == "earlier" ? study["earlier"]! : study;
        var sent = root["subjects"]![int.Parse(rest[1], System.Globalization.CultureInfo.InvariantCulture)]!;
        var whole = words.Split(" lesion ");
        if (!$" {whole[0]}".EndsWith($" {(string)sent["structure"]!}", StringComparison.Ordinal)) return "another structure";
        if (sent["side"] is { } side && (string)side! != "midline" && whole[0].Split(' ')[0] != (string)side!) return "another side";
        if (rest[2] != "lesions") return null;
        return whole.Length == 2 && (string)sent["lesions"]![int.Parse(rest[3], System.Globalization.CultureInfo.InvariantCulture)]!["id"]! == whole[1]
            ? null
            : "another lesion";
    }

    private static IEnumerable<SeenValue> Values(ProofPart part) => part.Looks.SelectMany(l => l.Values).Concat(part.Parts.SelectMany(Values));
}
