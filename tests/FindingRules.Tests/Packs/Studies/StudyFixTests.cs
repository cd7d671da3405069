using System.Text.Json;
using FindingRules.Model.Messages;
using Xunit;

namespace FindingRules.Tests.Packs.Studies;

/// <summary>A fix of a study is applied as it stands: the study is JSON afterwards, and the mistake is gone.</summary>
public sealed class StudyFixTests
{
    private const string Study = """
        { "study": "S-1", "protocols": [{ "protocol": "shoulder", "side": "right" }], "facts": { "modality": "ultrasound" },
          "subjects": [
            { "structure": "supraspinatus", "side": "right",
              "findings": { "echo": "anechoic", "tear-length": "14 mm", "fluid": { "from": "bursal", "to": "articular" },
                "thickness": { "value": 6, "unit": "mm" } },
              "lesions": [{ "id": "L1", "findings": { "shadowing": "present" } }] } ] }
        """;

    [Theory]
    [InlineData("\"side\": \"right\"", "\"side\": \"rigth\"")]
    [InlineData("\"echo\"", "\"ecco\"")]
    [InlineData("anechoic", "anechioc")]
    [InlineData("\"supraspinatus\"", "\"supraspinatsu\"")]
    [InlineData("\"structure\"", "\"structur\"")]
    [InlineData("\"modality\"", "\"modalty\"")]
    [InlineData("\"ultrasound\"", "\"ultrasond\"")]
    [InlineData("\"shoulder\"", "\"sholder\"")]
    [InlineData("\"14 mm\"", "\"140 mm\"")]
    [InlineData("\"from\": \"bursal\"", "\"from\": \"bursl\"")]
    [InlineData("\"from\"", "\"form\"")]
    [InlineData("\"subjects\"", "\"subject\"")]
    [InlineData("\"lesions\"", "\"lesion\"")]
    [InlineData("\"value\"", "\"valu\"")]
    [InlineData("\"study\": \"S-1\"", "\"stuy\": \"S-1\"")]
    [InlineData("\"protocol\":", "\"protocl\":")]
    public void One_slip_is_one_message_at_its_place_and_its_fix_mends_the_study(string sound, string spoilt)
    {
        var at = Study.IndexOf(sound, StringComparison.Ordinal);
        var text = Study[..at] + spoilt + Study[(at + sound.Length)..];

        var message = Assert.Single(Reads.Study(text).Messages);

        Assert.StartsWith("/", message.Location.Pointer, StringComparison.Ordinal);
        var mended = Apply(message.Fix!, text);
        using var parsed = JsonDocument.Parse(mended);
        Assert.Equal("", Reads.Show(Reads.Study(mended).Messages));
    }

    [Theory]
    [InlineData("\"echo\": \"anechoic\"", "\"patient-name\": \"x\"", "FR5005", "/subjects/0/findings/patient-name")]
    [InlineData("\"shadowing\": \"present\"", "\"frobnication\": \"present\"", "FR5011", "/subjects/0/lesions/0/findings/frobnication")]
    public void A_member_that_has_no_place_here_is_found_by_its_pointer(string sound, string spoilt, string code, string pointer)
    {
        var message = Assert.Single(Reads.Study(Study.Replace(sound, spoilt, StringComparison.Ordinal)).Messages);

        Assert.Equal((code, pointer), (message.Code, message.Location.Pointer));
    }

    private static string Apply(Fix fix, string text) =>
        text[..fix.Location.Span.Start] + fix.Replacement + text[fix.Location.Span.End..];
}
