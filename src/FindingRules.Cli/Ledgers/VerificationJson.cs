using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using FindingRules.Ledger.Verifying;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli.Ledgers;

/// <summary>
/// A verification for a program:
/// <c>{ledger, verified, records?, covered?, after?, erased?, erasedAfterHead?, root?, head?, problemCount, messages}</c>;
/// what has a question mark is missing where the ledger could not be read whole.
/// </summary>
internal static class VerificationJson
{
    private static readonly JsonWriterOptions Pretty =
        new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, Indented = true, NewLine = "\n" };

    public static string Of(string ledger, VerificationReport report) => Write(to =>
    {
        to.WriteString("ledger", ledger);
        to.WriteBoolean("verified", report.IsSound);
        to.WriteNumber("records", report.Records);
        to.WriteNumber("covered", report.Covered);
        to.WriteNumber("after", report.Records - report.Covered);
        to.WriteNumber("erased", report.Erased);
        to.WriteNumber("erasedAfterHead", report.ErasedAfterHead);
        to.WriteString("root", report.Root);
        if (report.Head is { } head)
        {
            to.WritePropertyName("head");
            to.WriteRawValue(head.ToJson());
        }
        to.WriteNumber("problemCount", report.ProblemCount);
        to.WritePropertyName("messages");
        MessageJson.Write(to, report.Problems);
    });

    public static string Of(string ledger, Message damage) => Write(to =>
    {
        to.WriteString("ledger", ledger);
        to.WriteBoolean("verified", false);
        to.WriteNumber("problemCount", 1);
        to.WritePropertyName("messages");
        MessageJson.Write(to, [damage]);
    });

    private static string Write(Action<Utf8JsonWriter> members)
    {
        var bytes = new ArrayBufferWriter<byte>(4096);
        using (var to = new Utf8JsonWriter(bytes, Pretty))
        {
            to.WriteStartObject();
            members(to);
            to.WriteEndObject();
        }
        return Encoding.UTF8.GetString(bytes.WrittenSpan);
    }
}
