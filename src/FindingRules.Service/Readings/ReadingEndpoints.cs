using FindingRules.Ledger.Records;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Output;
using FindingRules.Service.Hosting;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using FindingRules.Service.Records;

namespace FindingRules.Service.Readings;

internal static class ReadingEndpoints
{
    public const string Path = "/v1/readings";

    public static void MapReadings(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Path, ReadAsync)
            .WithName("CreateReading")
            .WithTags(TagOrder.Readings)
            .WithSummary("A study in, a reading out.")
            .WithDescription(
                "Reads one study against a pack in force. The pack may be left out where there is only one. "
                + "The answer is recorded, and leaves only when its record is durable: 201, with the address of the record in `Location`. "
                + "With `record=false`, or where the service keeps no records, nothing is recorded: 200. A request that is sent again with "
                + "its `Idempotency-Key` gets the first answer. A problem always says `\"reading\": null`: it is never a reading without "
                + "suggestions.")
            .Produces<object>(StatusCodes.Status200OK, "application/json")
            .Produces<object>(StatusCodes.Status201Created, "application/json")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status410Gone)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(StatusCodes.Status500InternalServerError)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    private static async Task<IResult> ReadAsync(
        HttpContext context, [AsParameters] ReadingParameters said, PackShelf shelf, ReadingDesk desk, ReadingRecorder recorder,
        ServiceSettings settings, ILogger<ReadingDesk> log)
    {
        context.Response.Headers.CacheControl = "no-store";
        var asked = ReadingRequest.Of(context.Request, said);
        if (asked.Problem is { } wrong) return No(log, wrong);
        var body = await StudyBody.TakeAsync(context.Request, settings.ForStudies, context.RequestAborted);
        if (body is not { Text: { } text }) return No(log, body.Problem!);
        var isRecorded = asked.IsRecorded && recorder.IsKeeping;
        var key = isRecorded ? asked.KeyFor(text, settings.Ledger.Actor) : null;
        if (key is not null && await recorder.FindAsync(key) is { } first) return OfRetry(first, log);

        var state = shelf.State;
        // A study is looked into for the pack that it names where there is a choice, or where the only pack did not read it.
        var chosen = asked.Pack is null && state.InForce is [var only] ? only : null;
        var answer = chosen is null ? null : await desk.ReadAsync(chosen.Compiled, text, context.RequestAborted);
        if (answer is not DeskAnswer.Finished { Outcome.Decided: { } decided })
        {
            var study = StudyPeek.At(text);
            var choice = PackChoice.Of(state, study, asked.Pack);
            // What is not JSON names no pack, and reads the same against any.
            chosen = study.IsJson ? choice.Pack : choice.Pack ?? state.InForce.FirstOrDefault();
            if (chosen is null) return No(log, choice.Problem!);
            answer ??= await desk.ReadAsync(chosen.Compiled, text, context.RequestAborted);
            if (answer is not DeskAnswer.Finished { Outcome.Decided: { } read })
                return No(log, ProblemOf(answer, study, chosen, settings.Limits, context, log));
            decided = read;
        }
        ServiceLog.Read(log, chosen!.Pack.Name, chosen.Pack.TextDigest);
        var bytes = ReadingJson.ToBytes(decided.Reading);
        if (!isRecorded) return new ReadingResult(bytes, null);
        return await recorder.AddAsync(chosen, decided, bytes, text, key, asked.Correlation) switch
        {
            AppendResult.Appended added => new ReadingResult(bytes, added.Id),
            var other => OfRetry(other, log),
        };
    }

    private static IResult OfRetry(AppendResult first, ILogger log) => first switch
    {
        AppendResult.Repeated { First: { Kind: RecordKind.Reading, Body: { } body } record } => new ReadingResult(body.Answer, record.Id),
        AppendResult.Repeated { First: var record } =>
            No(log, new(StatusCodes.Status410Gone, RecordMessages.CannotRepeat(record.Id.ToString()))),
        AppendResult.KeyTaken { First: var id } =>
            No(log, new(StatusCodes.Status422UnprocessableEntity, RecordMessages.RetryKeyTaken(id.ToString()))),
        _ => throw new InvalidOperationException("A reading is not refused."),
    };

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
