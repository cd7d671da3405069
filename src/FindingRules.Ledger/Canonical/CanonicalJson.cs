using System.Text.Json;

namespace FindingRules.Ledger.Canonical;

/// <summary>
/// JSON in the one form that RFC 8785 gives it: members sorted by UTF-16 code units, no white space, numbers as
/// ECMAScript writes them, only the escapes that are needed.
/// </summary>
public static class CanonicalJson
{
    /// <exception cref="JsonException">Not JSON, a member twice in one object, half a surrogate pair, or not UTF-8.</exception>
    public static byte[] Write(ReadOnlySpan<byte> json, NumberForm numbers = NumberForm.Doubles)
    {
        var writer = new CanonicalWriter(numbers, json.Length);
        return writer.Write(json);
    }
}
