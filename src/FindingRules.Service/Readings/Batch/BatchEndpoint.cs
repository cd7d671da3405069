using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Hosting;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using FindingRules.Service.Records;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;

namespace FindingRules.Service.Readings.Batch;

/// <summary>Studies in, a line each; readings out, a line each, in the same order, while more studies come.</summary>
internal static class BatchEndpoint
{
    public const string Path = "/v1/readings/batch";
    public const string ContentType = "application/x-ndjson";

    public static void MapBatch(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Path, ReadAsync)
            .WithName("CreateReadings")
            .WithTags(TagOrder.Readings)
            .WithSummary("Many studies in, many readings out.")
            .WithDescription(
                "NDJSON in and out: a study a line, answered by a line each, in their order, while more studies come. In the place of "
                + "a reading that there is not stands an object with `noReading`, the number of the line and the messages; the "
                + "other studies are read all the same. Read the answer while you send: whoever only sends has to wait. An answer that "
                + "ends early broke off, and says nothing of the studies behind it. Each reading is recorded before its line "
                + "leaves, and `id` names the record; with `record=false` nothing is recorded.")
            .WithMetadata(new DisableRequestSizeLimitAttribute())
            .Accepts<string>(ContentType)
            .Produces<string>(StatusCodes.Status200OK, ContentType)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    private static async Task<IResult> ReadAsync(
        HttpContext context, PackShelf shelf, BatchDesk desk, StudyEvaluation evaluate, ServiceSettings settings,
        ReadingRecorder recorder, ILogger<BatchDesk> log, [AsParameters] ReadingParameters said)
    {
        context.Response.Headers.CacheControl = "no-store";
        var state = shelf.State;
        var asked = ReadingRequest.Of(context.Request, said);
        if (Refusal(context.Request, state, asked) is { } problem)
        {
            ServiceLog.NoReading(log, problem.Cause.Code);
            return (problem with { IsForReading = true }).AsResult();
        }
        context.Response.ContentType = ContentType;
        await context.Response.StartAsync(context.RequestAborted);
        await desk.RunAsync(
            new BatchReader(context.Request.BodyReader, settings.ForStudies.StudyBytes),
            new BatchAnswers(
                state, asked, evaluate, asked.IsRecorded && recorder.IsKeeping ? recorder : null, settings, context.TraceIdentifier, log),
            context.Response.BodyWriter, context.RequestAborted);
        return TypedResults.Empty;
    }

    private static Problem? Refusal(HttpRequest request, ShelfState state, ReadingRequest asked)
    {
        if (asked.Problem is { } wrong) return wrong;
        if (asked.Key is not null) return new(StatusCodes.Status400BadRequest, RecordMessages.NoKeyForBatch());
        if (!IsLines(request)) return new(StatusCodes.Status415UnsupportedMediaType, NotLines(request.ContentType));
        return PackChoice.Refusal(state, asked.Pack);
    }

    private static bool IsLines(HttpRequest request) => request.Headers.ContentEncoding.Count == 0
        && MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && type.MediaType.Equals(ContentType, StringComparison.OrdinalIgnoreCase);

    private static Message NotLines(string? found) => ServiceMessages.ContentType(found, ContentType);
}
