using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;
using FindingRules.Ledger.Canonical;
using Xunit;

namespace FindingRules.Ledger.Tests.Canonical;

public sealed class CanonicalJsonTests
{
    /// <summary>Source: RFC 8785's own test data, cyberphone/json-canonicalization at 19d51d7.</summary>
    [VectorFact]
    public void Published_documents_come_out_byte_for_byte()
    {
        var folder = Path.Combine(VectorFactAttribute.Folder!, "jcs", "testdata");
        var inputs = Directory.GetFiles(Path.Combine(folder, "input"), "*.json");
        Assert.Equal(6, inputs.Length);
        foreach (var input in inputs)
        {
            var expected = File.ReadAllBytes(Path.Combine(folder, "output", Path.GetFileName(input)));
            Assert.Equal(Encoding.UTF8.GetString(expected), Encoding.UTF8.GetString(CanonicalJson.Write(File.ReadAllBytes(input))));
        }
    }

    /// <summary>Source: the same repository's 10,000 number renderings (IEEE 754 bits in hex, ECMAScript text).</summary>
    [VectorFact]
    public void Published_numbers_come_out_as_ECMAScript_writes_them()
    {
        var lines = File.ReadAllLines(Path.Combine(VectorFactAttribute.Folder!, "jcs", "es6-numbers-10000.txt"));
        Assert.Equal(10_000, lines.Length);
        foreach (var line in lines)
        {
            var parts = line.Split(',');
            var bits = ulong.Parse(parts[0], NumberStyles.HexNumber, CultureInfo.InvariantCulture);
            Assert.Equal(parts[1], EcmaNumber.Write(BitConverter.UInt64BitsToDouble(bits)));
            if (!parts[1].Contains('e', StringComparison.Ordinal)) Assert.Equal(parts[1], Written(parts[1], NumberForm.Exact));
            else Assert.Equal(parts[1], EcmaNumber.Write(double.Parse(Written(parts[1], NumberForm.Exact).Trim('"'), CultureInfo.InvariantCulture)));
        }
    }

    /// <summary>Source: RFC 8785, appendix B.</summary>
    [Theory]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(0x8000000000000000, "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0x4340000000000000, "9007199254740992")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x44b52d02c7e14af6, "1e+23")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x41b3de4355555553, "333333333.3333332")]
    public void Numbers_of_the_standard(ulong bits, string expected) =>
        Assert.Equal(expected, EcmaNumber.Write(BitConverter.UInt64BitsToDouble(bits)));

    [Theory]
    [InlineData("6.10", "6.1")]
    [InlineData("6.1", "6.1")]
    [InlineData("-0", "0")]
    [InlineData("-0.0", "0")]
    [InlineData("0.50", "0.5")]
    [InlineData("1E3", "1000")]
    [InlineData("0.0000001", "\"0.0000001\"")]
    [InlineData("-5E-7", "\"-0.0000005\"")]
    [InlineData("0.000001", "0.000001")]
    [InlineData("100000000000000000000000", "\"100000000000000000000000\"")]
    [InlineData("12345678901234567890", "\"12345678901234567890\"")]
    [InlineData("0.1000000000000000055511151231257827", "\"0.1000000000000000055511151231257827\"")]
    [InlineData("-1.00000000000000000010", "\"-1.0000000000000000001\"")]
    [InlineData("1e400", "\"1e+400\"")]
    [InlineData("2E-4000", "\"2e-4000\"")]
    [InlineData("1e99999999999", "\"1e99999999999\"")]
    public void A_number_keeps_its_value_whatever_a_double_can_hold(string written, string expected) =>
        Assert.Equal(expected, Written(written, NumberForm.Exact));

    /// <summary>A study that was taken once is taken again as it was recorded: a reader of quantities takes no exponent.</summary>
    [Fact]
    public void A_plain_decimal_is_kept_in_plain_digits_with_its_value() =>
        Gen.Select(Gen.Char["0123456789"].Array[1, 14], Gen.Char["0123456789"].Array[0, 14]).Sample((whole, part) =>
        {
            var text = new string(whole).TrimStart('0') is { Length: > 0 } digits ? digits : "0";
            if (part.Length > 0) text += $".{new string(part)}";
            var written = Written(text, NumberForm.Exact).Trim('"');
            Assert.DoesNotContain("e", written, StringComparison.Ordinal);
            Assert.Equal(decimal.Parse(text, CultureInfo.InvariantCulture), decimal.Parse(written, CultureInfo.InvariantCulture));
        });

    [Theory]
    [InlineData("""{"a":1,"a":2}""")]
    [InlineData("""{"a":1,"\u0061":2}""")]
    [InlineData("""{"b":1,"a":2,"b":3}""")]
    [InlineData("""{"a":"\ud800"}""")]
    [InlineData("""{"\ud800":1}""")]
    [InlineData("{")]
    [InlineData("")]
    [InlineData("1e400")]
    public void What_has_no_canonical_form_is_refused(string json) =>
        Assert.ThrowsAny<JsonException>(() => CanonicalJson.Write(Encoding.UTF8.GetBytes(json)));

    [Fact]
    public void Bytes_that_are_not_UTF8_are_refused() =>
        Assert.ThrowsAny<JsonException>(() =>
            CanonicalJson.Write("[\"\xFF\"]"u8.ToArray().Select(b => b == 0xC3 ? (byte)0xFF : b).ToArray()));

    /// <summary>A face needs a surrogate pair (D83D and on), which sorts before the last of the plain characters (FB33).</summary>
    [Fact]
    public void Members_are_sorted_by_UTF16_units_at_every_depth() => Assert.Equal(
        "[{\"\":{\"a\":1,\"b\":[{\"x\":1,\"y\":2}]},\"a\":3,\"aa\":4,\"\u00e9\":5,\"\U0001f600\":6,\"\ufb33\":7}]",
        Written("[{\"\ufb33\":7, \"aa\":4,\"\U0001f600\":6, \"\u00e9\":5,\"a\":3, \"\":{\"b\":[{\"y\":2,\"x\":1}],\"a\":1}}]",
            NumberForm.Doubles));

    /// <summary>The form is found again, does not depend on the order of members, and means the same.</summary>
    [Fact]
    public void Any_order_of_members_gives_one_form_that_stays() =>
        Gen.Select(Json(3), Gen.Int).Sample((value, seed) =>
        {
            var form = CanonicalJson.Write(JsonSerializer.SerializeToUtf8Bytes(Shuffled(value, new Random(seed))), NumberForm.Exact);
            Assert.Equal(form, CanonicalJson.Write(
                JsonSerializer.SerializeToUtf8Bytes(Shuffled(value, new Random(seed + 1))), NumberForm.Exact));
            Assert.Equal(form, CanonicalJson.Write(form));
            using var document = JsonDocument.Parse(form);
            Assert.True(JsonElement.DeepEquals(JsonSerializer.SerializeToElement(value), document.RootElement));
        });

    private static string Written(string json, NumberForm numbers) =>
        Encoding.UTF8.GetString(CanonicalJson.Write(Encoding.UTF8.GetBytes(json), numbers));

    private static Gen<object> Json(int depth)
    {
        var text = Gen.String[Gen.Char["aZ0 \u00e9\"\\\n\t\u0001/\ufb33"], 0, 6];
        var simple = Gen.OneOf<object>(text.Select(t => (object)t), Gen.Int.Select(i => (object)i),
            Gen.Bool.Select(b => (object)b), Gen.Double[-1e6, 1e6].Where(d => d == 0 || Math.Abs(d) > 1e-6).Select(d => (object)d));
        if (depth == 0) return simple;
        return Gen.OneOf<object>(
            simple, Json(depth - 1).List[0, 4].Select(l => (object)l),
                Gen.Dictionary(text, Json(depth - 1))[0, 5].Select(d => (object)d));
    }

    private static object Shuffled(object value, Random random) => value switch
    {
        Dictionary<string, object> d => d.OrderBy(_ => random.Next()).ToDictionary(p => p.Key, p => Shuffled(p.Value, random)),
        List<object> l => l.Select(i => Shuffled(i, random)).ToList(),
        _ => value,
    };
}
