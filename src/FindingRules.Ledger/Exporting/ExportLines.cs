using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Exporting;

/// <summary>
/// A ledger as NDJSON: a line for each record, with its place, its header as it was hashed, and what the body holds with the salt of its
/// commitment; <c>null</c> where it was erased. Records come and go one by one, whatever the size of the ledger.
/// </summary>
public static class ExportLines
{
    private const int FlushBytes = 64 * 1024;
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <returns>The number of lines.</returns>
    public static async Task<long> WriteAsync(
        Stream to, IAsyncEnumerable<LedgerRecord> records, IProgress<long>? progress = null, CancellationToken cancellation = default)
    {
        var buffer = new ArrayBufferWriter<byte>(FlushBytes * 2);
        await using var json = new Utf8JsonWriter(buffer, Plain);
        var lines = 0L;
        await foreach (var record in records.WithCancellation(cancellation))
        {
            Write(json, record);
            json.Flush();
            json.Reset();
            buffer.Write("\n"u8);
            lines++;
            if (buffer.WrittenCount < FlushBytes) continue;
            await to.WriteAsync(buffer.WrittenMemory, cancellation);
            buffer.ResetWrittenCount();
            progress?.Report(lines);
        }
        await to.WriteAsync(buffer.WrittenMemory, cancellation);
        await to.FlushAsync(cancellation);
        progress?.Report(lines);
        return lines;
    }

    private static void Write(Utf8JsonWriter to, LedgerRecord record)
    {
        to.WriteStartObject();
        to.WriteNumber("index", record.Index);
        WriteRaw(to, "header", record.Header);
        WriteRaw(to, "content", record.Body?.Content ?? default);
        // The bytes as answered, not the value that they stand for: a line break in them would end the line.
        if (record.Body is { Answer.IsEmpty: false } body) to.WriteString(
            "answer", System.Text.Encoding.UTF8.GetString(body.Answer.Span));
        else to.WriteNull("answer");
        WriteRaw(to, "terms", record.Body?.TermsJson ?? default);
        if (record.Body is { } salted) to.WriteString("salt", Convert.ToHexStringLower(salted.Salt.Span));
        else to.WriteNull("salt");
        to.WriteEndObject();
    }

    private static void WriteRaw(Utf8JsonWriter to, string name, ReadOnlyMemory<byte> canonical)
    {
        to.WritePropertyName(name);
        if (canonical.IsEmpty) to.WriteNullValue();
        else to.WriteRawValue(canonical.Span);
    }
}
