using System.Text.Json.Nodes;
using FindingRules.Model.Text;
using FindingRules.Output;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.FrontDoor;

/// <summary>A study is the same study in whatever order its parts were sent, and its reading the same bytes.</summary>
public sealed class StudyOrderTests
{
    private static readonly CompiledPack Shipped = PackFolder.Load(Repository.PathOf("rules", "msk-ultrasound")).Pack!;

    private const string SeveralLesions = """
        { "study": "T-1",
          "protocols": [{ "protocol": "shoulder", "side": "right" }, { "protocol": "heel", "side": "left" }, { "protocol": "shoulder", "side": "left" }],
          "facts": { "modality": "ultrasound", "arm-position": "crass" },
          "subjects": [
            { "structure": "supraspinatus", "side": "right", "normal": true,
              "lesions": [
                { "id": "L2", "findings": { "fluid": "bursal", "reangled": "persists", "planes": "two" } },
                { "id": "L1", "findings": { "fluid": "articular", "tear-length": "9 mm" } } ] },
            { "structure": "plantar-fascia", "side": "left", "normal": true, "findings": { "fascia-thickness": "5.1 mm" } },
            { "structure": "biceps", "side": "right", "notAssessable": true } ] }
        """;

    public static TheoryData<string> Studies() =>
        [SeveralLesions, .. Directory.EnumerateFiles(Repository.PathOf("rules", "msk-ultrasound", "studies"), "*.json").Select(File.ReadAllText)];

    [Theory]
    [MemberData(nameof(Studies))]
    public void The_order_of_its_parts_changes_no_byte(string study)
    {
        var plain = Bytes(study);
        Assert.Equal(plain, Bytes(Turned(JsonNode.Parse(study)!, parts => parts.Reverse()).ToJsonString()));
        Assert.Equal(plain, Bytes(Turned(JsonNode.Parse(study)!, parts => parts.Skip(1).Concat(parts.Take(1))).ToJsonString()));
    }

    private static string Bytes(string study)
    {
        var answer = Shipped.Read(new SourceText("study.json", study));
        Assert.NotNull(answer.Reading);
        return System.Text.Encoding.UTF8.GetString(ReadingJson.ToBytes(answer.Reading).Span);
    }

    private static JsonNode Turned(JsonNode node, Func<IEnumerable<JsonNode?>, IEnumerable<JsonNode?>> turn) => node switch
    {
        JsonArray list => new JsonArray([.. turn(list).ToList().Select(n => Turned(n!.DeepClone(), turn))]),
        JsonObject members => new JsonObject(
            turn(members.Select(m => (JsonNode?)JsonValue.Create(m.Key)))
                .Select(key => KeyValuePair.Create((string)key!, (JsonNode?)Turned(members[(string)key!]!.DeepClone(), turn)))),
        _ => node,
    };
}
