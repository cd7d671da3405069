using System.Text.Json.Nodes;
using FindingRules.Language;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;
using Xunit;

namespace FindingRules.Tests.Schemas;

/// <summary>What the schemas take for a stretch of quantities is what the rule language reads as one.</summary>
public sealed class StretchPatternTests
{
    private static readonly SchemaFile Band = SchemaFile.From("""{ "$ref": "common.schema.json#/$defs/band" }""");
    private static readonly SchemaFile Range = SchemaFile.From("""{ "$ref": "common.schema.json#/$defs/range" }""");

    [Theory]
    [InlineData("0.5 mm to 30 mm")]
    [InlineData("from 1 cm to below 3 cm")]
    [InlineData("from 3 cm to 5 cm")]
    [InlineData("above 1 cm to 3 cm")]
    [InlineData("at least 1 cm to below 3 cm")]
    [InlineData("> 1 cm to 3 cm")]
    [InlineData("-2 mm to 3 mm")]
    public void A_range_is_read_and_valid(string text)
    {
        Assert.True(IsRead(text));
        Assert.Empty(Range.Errors(JsonValue.Create(text)));
        Assert.Empty(Band.Errors(JsonValue.Create(text)));
    }

    [Theory]
    [InlineData("below 1 cm")]
    [InlineData("at most 1 cm")]
    [InlineData("above 5 cm")]
    [InlineData("at least 5 cm")]
    [InlineData("< 1 cm")]
    [InlineData(">=5 cm")]
    public void A_stretch_that_is_open_on_one_side_is_read_and_is_a_band(string text)
    {
        Assert.True(IsRead(text));
        Assert.NotEmpty(Range.Errors(JsonValue.Create(text)));
        Assert.Empty(Band.Errors(JsonValue.Create(text)));
    }

    [Theory]
    [InlineData("under 1 cm")]
    [InlineData("1 cm")]
    [InlineData("1 cm - 3 cm")]
    [InlineData("from 1 cm")]
    [InlineData("below 1 cm to 3 cm")]
    [InlineData("small")]
    public void Anything_else_is_neither(string text)
    {
        Assert.False(IsRead(text));
        Assert.NotEmpty(Range.Errors(JsonValue.Create(text)));
        Assert.NotEmpty(Band.Errors(JsonValue.Create(text)));
    }

    private static bool IsRead(string text)
    {
        var language = new RuleLanguage(new Symbols { Vocabulary = Vocabulary.Empty }, LoadLimits.Default, new MessageBag());
        return language.ReadRange(MappedText.Verbatim(new SourceText("band", text)), Unit.Millimetre) is not null;
    }
}
