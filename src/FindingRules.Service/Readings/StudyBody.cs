using System.Buffers;
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
        for (var body = request.BodyReader; ;)
        {
            var read = await body.ReadAsync(gone);
            if (read.Buffer.Length > most) return TooLarge(most);
            if (read.IsCompleted)
            {
                var text = TextOf(read.Buffer, limits);
                body.AdvanceTo(read.Buffer.End);
                return text.Message is { } message ? NotText(message) : new StudyBody(text.Text, null);
            }
            body.AdvanceTo(read.Buffer.Start, read.Buffer.End);
        }
    }

    private static StudyText TextOf(in ReadOnlySequence<byte> bytes, LoadLimits limits) =>
        StudyText.FromBytes("request", bytes.IsSingleSegment ? bytes.FirstSpan : bytes.ToArray(), limits);

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
