using System.Collections.Immutable;
using System.Text.Json;

namespace FindingRules.Output;

internal static class JsonWriting
{
    public static void WriteOptional(this Utf8JsonWriter to, ReadOnlySpan<byte> name, string? value)
    {
        if (value is not null) to.WriteString(name, value);
    }

    public static void WriteStrings(this Utf8JsonWriter to, ReadOnlySpan<byte> name, ImmutableArray<string> values)
    {
        to.WriteStartArray(name);
        foreach (var value in values) to.WriteStringValue(value);
        to.WriteEndArray();
    }

    public static void WriteList<T>(
        this Utf8JsonWriter to, ReadOnlySpan<byte> name, ImmutableArray<T> values, Action<Utf8JsonWriter, T> write)
    {
        to.WriteStartArray(name);
        foreach (var value in values) write(to, value);
        to.WriteEndArray();
    }
}
