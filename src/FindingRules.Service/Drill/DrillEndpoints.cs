using System.Globalization;
using FindingRules.Drill;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using FindingRules.Service.Hosting;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using FindingRules.Service.Readings;

namespace FindingRules.Service.Drill;

/// <summary>Questions for trainees and what becomes of their answers. Nothing is recorded, and nobody is named.</summary>
internal static class DrillEndpoints
{
    private const int MostQuestions = 50;
    private const int FewQuestions = 10;
    private const string Json = "application/json; charset=utf-8";

    public static void MapDrill(this IEndpointRouteBuilder routes)
    {
        var drill = routes.MapGroup("/v1/drill").WithTags(TagOrder.Drill);
        drill.MapGet("questions", DrawAsync)
            .WithName("DrawQuestions")
            .WithSummary("Questions about the invented cases of a pack, without their answers.")
            .WithDescription("The same pack and seed give the same questions. Nothing is recorded.")
            .Produces<object>(StatusCodes.Status200OK, "application/json")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
        drill.MapPost("answers", JudgeAsync)
            .WithName("JudgeAnswer")
            .WithSummary("An answer in, what is to be said of it out, with the proof.")
            .WithDescription(
                "The id of a question carries all that is needed to judge it. Nothing is recorded, and there is no place for who answers.")
            .Produces<object>(StatusCodes.Status200OK, "application/json")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
    }

    private static async Task<IResult> DrawAsync(
        HttpContext context, PackShelf shelf, DrillDecks decks, string? pack, string? seed, string? count)
    {
        context.Response.Headers.CacheControl = "no-store";
        string[] known = ["pack", "seed", "count"];
        if (context.Request.Query.Keys.FirstOrDefault(k => !known.Contains(k)) is { } strange)
            return new Problem(StatusCodes.Status400BadRequest, ServiceMessages.UnknownParameter(strange, known)).AsResult();
        var messages = new MessageBag();
        var from = Number("seed", seed, 0, (long)DrillDeck.MostSeed, 1, messages);
        var many = Number("count", count, 1, MostQuestions, FewQuestions, messages);
        if (messages.HasErrors) return new Problem(StatusCodes.Status400BadRequest, messages.Sorted()[0]).AsResult();
        var choice = PackChoice.Of(shelf.State, new StudyPeek(true, null, null), pack);
        if (choice.Pack is not { } taken) return choice.Problem!.AsResult();
        var sheet = await decks.AskAsync(
            taken.Compiled, deck => DrillSheet.Of(deck, (ulong)from, (int)many, hasAnswers: false), context.RequestAborted);
        return sheet.Questions.IsEmpty
            ? new Problem(StatusCodes.Status422UnprocessableEntity, DrillMessages.NothingToAsk(At(""), taken.Pack.Name)).AsResult()
            : Results.Bytes(DrillJson.ToBytes(sheet), Json);
    }

    private static async Task<IResult> JudgeAsync(HttpContext context, PackShelf shelf, DrillDecks decks, ServiceSettings settings)
    {
        context.Response.Headers.CacheControl = "no-store";
        if (context.Request.Query.Keys.FirstOrDefault() is { } strange)
            return new Problem(StatusCodes.Status400BadRequest, ServiceMessages.UnknownParameter(strange, [])).AsResult();
        var body = await StudyBody.TakeAsync(context.Request, settings.ForStudies, context.RequestAborted);
        if (body is not { Text: { } text }) return body.Problem!.AsResult();
        var messages = new MessageBag();
        if (AnswerBody.Read(text, messages) is not { } answer)
            return new Problem(StatusCodes.Status422UnprocessableEntity, messages.Sorted()[0]).AsResult();
        if (shelf.State.InForce.IsEmpty)
            return new Problem(StatusCodes.Status503ServiceUnavailable, ServiceMessages.NoPackInForce()).AsResult();

        var asked = shelf.State.InForce.FirstOrDefault(p => DrillDeck.IsOf(answer.Question, p.Pack)) ?? shelf.State.InForce[0];
        var judged = await decks.AskAsync(
            asked.Compiled, deck => deck.Judge(answer.Question, answer.Choice, answer.Deciding ?? [], messages), context.RequestAborted);
        if (judged is not null) return Results.Bytes(DrillJson.ToBytes(judged), Json);
        var mistakes = messages.Sorted();
        var isMissing = mistakes.Any(m => m.Number is 8101 or 8102);
        var status = isMissing ? StatusCodes.Status404NotFound : StatusCodes.Status422UnprocessableEntity;
        return new Problem(status, mistakes[0], mistakes).AsResult();
    }

    private static long Number(string name, string? written, long least, long most, long otherwise, MessageBag messages)
    {
        if (written is null) return otherwise;
        if (long.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
            return number;
        messages.Add(DrillMessages.NumberOutOfRange(At(written), name, written, least, most));
        return otherwise;
    }

    private static Location At(string written) => new SourceText("address", written).Whole;
}
