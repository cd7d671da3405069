using System.Text;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using FindingRules.Service.Problems;
using Microsoft.Net.Http.Headers;

namespace FindingRules.Service.Readings;

/// <summary>The body of a request as text, or why it could not be taken.</summary>
internal sealed record StudyBody(SourceText? Text, Problem? Problem)
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static async Task<StudyBody> TakeAsync(HttpRequest request, int most, CancellationToken gone)
    {
        if (!IsJson(request))
            return No(StatusCodes.Status415UnsupportedMediaType, ServiceMessages.ContentType(Said(request)));
        if (request.ContentLength > most) return TooLarge(most);
        using var body = new MemoryStream((int)Math.Min(request.ContentLength ?? 4096, most));
        var buffer = new byte[16 * 1024];
        for (int count; (count = await request.Body.ReadAsync(buffer, gone)) > 0;)
        {
            if (body.Length + count > most) return TooLarge(most);
            body.Write(buffer, 0, count);
        }
        return Decode(body.GetBuffer().AsSpan(0, (int)body.Length));
    }

    private static StudyBody Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.UTF8.Preamble)) bytes = bytes[Encoding.UTF8.Preamble.Length..];
        try
        {
            return new StudyBody(new SourceText("request", Strict.GetString(bytes)), null);
        }
        catch (DecoderFallbackException e)
        {
            return No(StatusCodes.Status400BadRequest, ToolMessages.NotUtf8("request", e.Index));
        }
    }

    private static bool IsJson(HttpRequest request) =>
        request.Headers.ContentEncoding.Count == 0
        && MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase)
        && (!type.Charset.HasValue || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase)
            || type.Charset.Equals("\"utf-8\"", StringComparison.OrdinalIgnoreCase));

    private static string? Said(HttpRequest request) => request.Headers.ContentEncoding.Count == 0
        ? request.ContentType
        : $"{request.ContentType}, {request.Headers.ContentEncoding}";

    private static StudyBody TooLarge(int most) =>
        No(StatusCodes.Status413PayloadTooLarge, ServiceMessages.RequestTooLarge(most));

    private static StudyBody No(int status, Model.Messages.Message cause) => new(null, new Problem(status, cause));
}
