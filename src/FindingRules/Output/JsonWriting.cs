using System.Text.Json;

namespace FindingRules.Output;

internal static class JsonWriting
{
    public static void WriteOptional(this Utf8JsonWriter to, string name, string? value)
    {
        if (value is not null) to.WriteString(name, value);
    }

    public static void WriteStrings(this Utf8JsonWriter to, string name, IEnumerable<string> values) =>
        to.WriteList(name, values, (writer, value) => writer.WriteStringValue(value));

    public static void WriteList<T>(this Utf8JsonWriter to, string name, IEnumerable<T> values, Action<Utf8JsonWriter, T> write)
    {
        to.WriteStartArray(name);
        foreach (var value in values) write(to, value);
        to.WriteEndArray();
    }
}
