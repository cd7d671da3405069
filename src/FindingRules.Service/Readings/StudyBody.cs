using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Service.Problems;
using Microsoft.Net.Http.Headers;

namespace FindingRules.Service.Readings;

/// <summary>The body of a request as text, or why it could not be taken.</summary>
internal sealed record StudyBody(SourceText? Text, Problem? Problem)
{
    public static async Task<StudyBody> TakeAsync(HttpRequest request, LoadLimits limits, CancellationToken gone)
    {
        var most = limits.StudyBytes;
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
        var text = StudyText.FromBytes("request", body.GetBuffer().AsSpan(0, (int)body.Length), limits);
        return text.Message is { } message ? NotText(message) : new StudyBody(text.Text, null);
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

    private static StudyBody NotText(Message message) =>
        new(null, new Problem(StatusCodes.Status400BadRequest, ServiceMessages.NotJson(), [message]));

    private static StudyBody No(int status, Message cause) => new(null, new Problem(status, cause));
}
