using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Hosting;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;

namespace FindingRules.Service.Readings;

internal static class ReadingEndpoints
{
    public const string Path = "/v1/readings";
    private const string PackParameter = "pack";

    public static void MapReadings(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Path, ReadAsync)
            .WithName("CreateReading")
            .WithTags(TagOrder.Readings)
            .WithSummary("A study in, a reading out.")
            .WithDescription(
                "Reads one study against a pack in force. The pack may be left out where there is only one. "
                + "A problem always says `\"reading\": null`: it is never a reading without suggestions. Nothing is recorded.")
            .Produces<object>(StatusCodes.Status200OK, "application/json")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(StatusCodes.Status500InternalServerError)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    private static async Task<IResult> ReadAsync(
        HttpContext context, PackShelf shelf, ReadingDesk desk, ServiceSettings settings, ILogger<ReadingDesk> log, string? pack)
    {
        context.Response.Headers.CacheControl = "no-store";
        if (context.Request.Query.Keys.FirstOrDefault(k => k != PackParameter) is { } unknown)
            return No(log, new(StatusCodes.Status400BadRequest, ServiceMessages.UnknownParameter(unknown, [PackParameter])));
        var body = await StudyBody.TakeAsync(context.Request, settings.ForStudies, context.RequestAborted);
        if (body is not { Text: { } text }) return No(log, body.Problem!);

        var state = shelf.State;
        var study = StudyPeek.At(text);
        var choice = PackChoice.Of(state, study, pack);
        // What is not JSON names no pack, and reads the same against any.
        var chosen = study.IsJson ? choice.Pack : choice.Pack ?? state.InForce.FirstOrDefault();
        if (chosen is null) return No(log, choice.Problem!);

        var answer = await desk.ReadAsync(chosen.Compiled, text, context.RequestAborted);
        if (answer is not DeskAnswer.Finished { Outcome.Reading: { } reading })
            return No(log, ProblemOf(answer, study, chosen, settings.Limits, context, log));
        ServiceLog.Read(log, chosen.Pack.Name, chosen.Pack.TextDigest);
        return new ReadingResult(reading);
    }

    /// <summary>Why there is no reading, and so nothing to explain either.</summary>
    public static Problem ProblemOf(
        DeskAnswer answer, StudyPeek study, TakenPack pack, ServiceLimits limits, HttpContext context, ILogger log)
    {
        switch (answer)
        {
            case DeskAnswer.Late:
                return new(StatusCodes.Status503ServiceUnavailable,
                    ServiceMessages.ReadingLate(limits.ReadingMilliseconds));
            case DeskAnswer.Busy:
                context.Response.Headers.RetryAfter = "1";
                return new(StatusCodes.Status503ServiceUnavailable,
                    ServiceMessages.Busy(limits.ConcurrentReadings, limits.WaitingReadings));
            case DeskAnswer.Finished { Outcome.Messages: var messages } when messages.Any(IsMistakeOfStudy):
                var mistakes = messages.Count(IsMistakeOfStudy);
                return study.IsJson
                    ? new(StatusCodes.Status422UnprocessableEntity, ServiceMessages.StudyWrong(pack.Pack.Name, mistakes), messages)
                    : new(StatusCodes.Status400BadRequest, ServiceMessages.NotJson(), messages);
            default:
                if (answer is DeskAnswer.Failed { Fault: var fault })
                    ServiceLog.Failed(log, context.TraceIdentifier, fault.GetType().Name, fault.StackTrace ?? "");
                return new(StatusCodes.Status500InternalServerError, ServiceMessages.ReadingFailed())
                {
                    Request = context.TraceIdentifier,
                };
        }
    }

    // FR0001 is a fault of the tool: the study may be in order.
    private static bool IsMistakeOfStudy(Message message) => message is { Severity: Severity.Error, Number: not 1 };

    private static IResult No(ILogger log, Problem problem)
    {
        ServiceLog.NoReading(log, problem.Cause.Code);
        return (problem with { IsForReading = true }).AsResult();
    }
}
