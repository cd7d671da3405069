using FindingRules.Model.Packs;
using Xunit;

namespace FindingRules.Tests.FrontDoor;

public sealed class StudyTextTests
{
    [Fact]
    public void A_byte_order_mark_is_left_out() =>
        Assert.Equal("{}", StudyText.FromBytes("s.json", [0xEF, 0xBB, 0xBF, .. "{}"u8]).Text!.Content);

    [Fact]
    public void A_byte_that_does_not_fit_is_counted()
    {
        var message = StudyText.FromBytes("s.json", [.. "{\"ä\":"u8, 0xE4, 0x22]).Message!;
        Assert.Equal("FR0005", message.Code);
        Assert.Contains("byte 6 ", message.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_keeps_its_number()
    {
        Assert.Equal(7, StudyText.FromBytes("s.ndjson", "{}"u8, line: 7).Text!.PositionOf(0).Line);
        Assert.Equal(7, StudyText.FromBytes("s.ndjson", [0xFF], line: 7).Message!.Location.Start.Line);
    }

    [Fact]
    public void What_is_larger_than_a_study_may_be_is_refused()
    {
        var limits = LoadLimits.Default with { StudyBytes = 2 };
        Assert.NotNull(StudyText.FromBytes("s.json", "{}"u8, limits).Text);
        Assert.Equal("FR0019", StudyText.FromBytes("s.json", "{ }"u8, limits).Message!.Code);
    }
}
