using System.Text.Json;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Text;
using Xunit;

namespace FindingRules.Tests.Messages;

public sealed class MessageJsonTests
{
    private static readonly SourceText Source = new("rules.yaml", "one\ntwo three\n");

    [Fact]
    public void A_plain_message_has_every_member_that_is_always_there() => Assert.Equal(
        """
        {"code":"FR4003","severity":"error","text":"\u0060CASE-1\u0060 came out with \u0060refer\u0060, which is not under its \u0060next\u0060","file":"rules.yaml","line":2,"column":5,"endLine":2,"endColumn":10,"related":[]}
        """.Trim(),
        Json(CaseMessages.CameUnexpected(At(8, 5), "CASE-1", "next", "refer", [])));

    [Fact]
    public void Pointer_label_related_places_and_fix_are_added()
    {
        var message = CaseMessages.RuleWithoutCase(At(4, 3) with { Pointer = "/a~1b" }, "ONE") with
        {
            Related = [new RelatedPlace(At(0, 3), "first here")],
            Fix = new Fix("write `two`", At(4, 3), "two"),
        };
        using var json = JsonDocument.Parse(Json(message));
        Assert.Equal("/a~1b", json.RootElement.GetProperty("pointer").GetString());
        Assert.Equal("add a case whose findings make it true", json.RootElement.GetProperty("label").GetString());
        Assert.Equal(1, json.RootElement.GetProperty("related")[0].GetProperty("line").GetInt32());
        Assert.Equal("two", json.RootElement.GetProperty("fix").GetProperty("replacement").GetString());
    }

    [Fact]
    public void Half_a_surrogate_pair_from_an_escape_does_not_break_the_json()
    {
        using var json = JsonDocument.Parse(Json(CaseMessages.RuleWithoutCase(At(0, 1), "\uD83D")));
        Assert.Contains('\uFFFD', json.RootElement.GetProperty("text").GetString()!);
    }

    private static Location At(int start, int length) => new(Source, new TextSpan(start, length));

    private static string Json(Message message)
    {
        var bytes = new MemoryStream();
        using (var to = new Utf8JsonWriter(bytes)) MessageJson.Write(to, message);
        return System.Text.Encoding.UTF8.GetString(bytes.ToArray());
    }
}
