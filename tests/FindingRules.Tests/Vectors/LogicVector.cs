using System.Collections.Immutable;
using System.Text.Json;

namespace FindingRules.Tests.Vectors;

/// <summary>One case of a published suite: expressions, and for each the value that it must have (null: unknown).</summary>
internal sealed record LogicVector(
    string Group, string Name, ImmutableArray<string> Expressions, ImmutableDictionary<string, ImmutableArray<string?>> Inputs,
    ImmutableArray<string?> Expected, bool IsError)
{
    public static ImmutableArray<LogicVector> ReadCql() => Read("cql-vectors.jsonl", line => new LogicVector(
        $"{Text(line, "file").Replace("Test.xml", "", StringComparison.Ordinal)}/{Text(line, "group")}", Text(line, "name"),
        [Text(line, "expression")], ImmutableDictionary<string, ImmutableArray<string?>>.Empty,
        [.. Texts(line.GetProperty("expected")).Select(e => e == "null" ? null : e)], line.GetProperty("invalid").ValueKind != JsonValueKind.Null));

    public static ImmutableArray<LogicVector> ReadFeel() => Read("feel-vectors.jsonl", line => new LogicVector(
        Text(line, "suite").Split('/')[1], $"{Text(line, "case")} {Text(line, "decision")}", [.. Texts(line.GetProperty("feel")).Select(t => t!)],
        line.GetProperty("inputs").EnumerateObject().ToImmutableDictionary(i => i.Name, i => Texts(i.Value)),
        Texts(line.GetProperty("expected")), line.GetProperty("errorResult").GetBoolean()));

    private static ImmutableArray<LogicVector> Read(string file, Func<JsonElement, LogicVector> read)
    {
        var path = Path.Combine(VectorFactAttribute.VectorFolder!, "logic", file);
        return [.. File.ReadLines(path).Select(line => read(JsonDocument.Parse(line).RootElement))];
    }

    private static string Text(JsonElement line, string name) => line.GetProperty(name).GetString()!;

    private static ImmutableArray<string?> Texts(JsonElement list) => [.. list.EnumerateArray().Select(e => e.GetString())];
}
