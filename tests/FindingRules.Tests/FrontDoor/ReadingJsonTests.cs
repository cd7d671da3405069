using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using FindingRules.Model.Readings;
using FindingRules.Output;
using FindingRules.Testing;
using FindingRules.Tests.Schemas;
using Xunit;

namespace FindingRules.Tests.FrontDoor;

public sealed class ReadingJsonTests
{
    private static readonly JsonSerializerOptions ByReflection = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static TheoryData<string> Samples => ["full", "empty"];

    [Theory]
    [MemberData(nameof(Samples))]
    public void Every_member_of_a_reading_is_written_in_its_order(string sample) =>
        Assert.Equal(JsonSerializer.Serialize(Sample(sample), ByReflection), Text(ReadingJson.ToBytes(Sample(sample))));

    [Fact]
    public void The_shape_of_a_reading_is_stable() => Snapshot.Match(Text(ReadingJson.ToBytes(SampleReading.Full, isPretty: true)));

    [Theory]
    [MemberData(nameof(Samples))]
    public void A_reading_fits_its_schema(string sample) =>
        Assert.Empty(SchemaFile.Of("reading").Errors(JsonNode.Parse(ReadingJson.ToBytes(Sample(sample)).Span)));

    [Fact]
    public void No_reading_says_so_in_its_first_member()
    {
        var none = new NoReading("the study has 1 error", "march.ndjson", 3, []);
        Assert.Equal(
            """{"noReading":"the study has 1 error","source":"march.ndjson","line":3,"messages":[]}""",
            Text(ReadingJson.NoReadingToBytes(none)));
    }

    private static Reading Sample(string name) => name == "full" ? SampleReading.Full : SampleReading.Empty;

    private static string Text(ReadOnlyMemory<byte> bytes) => Encoding.UTF8.GetString(bytes.Span);
}
