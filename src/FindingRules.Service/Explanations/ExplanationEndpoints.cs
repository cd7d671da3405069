using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Hosting;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using FindingRules.Service.Readings;

namespace FindingRules.Service.Explanations;

internal static class ExplanationEndpoints
{
    public const string Path = "/v1/readings/explain";
    private const int ExplanationFamily = 8;

    public static void MapExplanations(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Path, ExplainAsync)
            .WithName("ExplainReading")
            .WithTags(TagOrder.Readings)
            .WithSummary("A study and a question in, an explanation of its reading out.")
            .WithDescription(
                "Says why the reading of a study says what it says, why a rule does not apply and what would have to be different, "
                + "what would take back each suggestion, or what each missing finding would lead to. The study is evaluated anew; "
                + "nothing is recorded.")
            .Produces<object>(StatusCodes.Status200OK, "application/json")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(StatusCodes.Status500InternalServerError)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    private static async Task<IResult> ExplainAsync(
        HttpContext context, PackShelf shelf, ReadingDesk desk, ServiceSettings settings, ILogger<ReadingDesk> log,
        string? question, string? rule, string? subject, string? pack)
    {
        context.Response.Headers.CacheControl = "no-store";
        var asked = QuestionQuery.Read(context.Request.Query);
        if (asked.Question is not { } wanted) return new Problem(StatusCodes.Status400BadRequest, asked.Message!).AsResult();
        var body = await StudyBody.TakeAsync(context.Request, settings.ForStudies, context.RequestAborted);
        if (body is not { Text: { } text }) return body.Problem!.AsResult();

        var study = StudyPeek.At(text);
        var choice = PackChoice.Of(shelf.State, study, pack);
        var chosen = study.IsJson ? choice.Pack : choice.Pack ?? shelf.State.InForce.FirstOrDefault();
        if (chosen is null) return choice.Problem!.AsResult();

        var answer = await desk.ExplainAsync(chosen.Compiled, text, wanted, context.RequestAborted);
        if (answer is DeskAnswer.Explained { Outcome: var outcome })
        {
            if (outcome.Explanation is { } explanation) return new ExplanationResult(explanation);
            if (outcome.Messages.FirstOrDefault(m => m.Number / 1000 == ExplanationFamily) is { } misasked)
                return new Problem(StatusOf(misasked), misasked).AsResult();
            answer = new DeskAnswer.Finished(new WholeReading(null, outcome.Messages));
        }
        return ReadingEndpoints.ProblemOf(answer, study, chosen, settings.Limits, context, log).AsResult();
    }

    /// <summary>A name that is not found, or a question that is none.</summary>
    private static int StatusOf(Message message) => message.Number <= ExplanationMessages.LastOfNotFound
        ? StatusCodes.Status404NotFound
        : StatusCodes.Status400BadRequest;
}
