using System.Collections.Immutable;
using System.Text;
using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Hosting;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Problems;
using FindingRules.Service.Readings;
using FindingRules.Service.Records;
using Microsoft.AspNetCore.Mvc;

namespace FindingRules.Service.Feedback;

/// <summary>What became of suggestions: accepted, or overridden for a reason that the pack lists. No free text.</summary>
internal static class FeedbackEndpoints
{
    // More than any reading has: each wrong one is answered with all that would be right.
    private const int MostSuggestions = 500;

    public static void MapFeedback(this IEndpointRouteBuilder routes)
    {
        var feedback = routes.MapGroup($"{ReadingEndpoints.Path}/{{id}}/feedback").WithTags(TagOrder.Records);
        feedback.MapPost("", AddAsync).ToLedger()
            .WithName("CreateFeedback")
            .WithSummary("Which suggestions of a reading were accepted, and which were overridden and why.")
            .WithDescription(
                "A suggestion is named by `topic` and `subject`, or by `step`, or by `caution`. Reasons are codes that the pack of the "
                + "reading lists under `reasons`; there is no free text. "
                + "Feedback is a record of its own: a later one counts, and both stay.")
            .Accepts<FeedbackRequest>("application/json")
            .Produces<FeedbackRecorded>(StatusCodes.Status201Created)
            .ProducesProblem(StatusCodes.Status410Gone).ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType).ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        feedback.MapGet("", ListAsync).ToLedger()
            .WithName("ListFeedback")
            .WithSummary("All feedback on a reading, the newest first.")
            .Produces<FeedbackResponse>();
    }

    private static async Task<IResult> AddAsync(
        HttpContext context, LedgerKeeper keeper, ServiceSettings settings, string id,
        [FromHeader(Name = ReadingRequest.KeyHeader)] string? key)
    {
        if (key is not null && !ReadingRequest.IsKey(context.Request.Headers[ReadingRequest.KeyHeader]))
            return LedgerRoute.No(StatusCodes.Status400BadRequest, RecordMessages.RetryKeyForm());
        var (record, no) = await FindReadingAsync(keeper, id);
        if (record is null) return no!;
        if (record.Body is not { } body) return LedgerRoute.No(StatusCodes.Status410Gone, LedgerUseMessages.ReadingErased(id));
        var sent = await StudyBody.TakeAsync(context.Request, settings.ForStudies, context.RequestAborted);
        if (sent.Text is not { } text) return sent.Problem!.AsResult();
        if (FeedbackRequest.Read(text.Content) is not { } request)
            return LedgerRoute.No(StatusCodes.Status400BadRequest, RecordMessages.FeedbackForm(
                "the feedback is not in the form that is taken", "`suggestions`, each with a `verdict` and the name of one suggestion"));
        if (request.Suggestions.Count > MostSuggestions)
            return LedgerRoute.No(StatusCodes.Status400BadRequest, RecordMessages.FeedbackForm(
                $"the feedback speaks of {request.Suggestions.Count} suggestions", $"at most {MostSuggestions} at once"));
        var (entry, wrong) = Entry(request, record, body, await ReasonsAsync(keeper, record), settings.Ledger.Actor);
        if (entry is null) return Wrong(wrong);
        entry = entry with { Correlation = ReadingRequest.CorrelationOf(context.Request) };
        var retry = key is null ? null : new RetryKey(settings.Ledger.Actor, key, Encoding.UTF8.GetBytes(text.Content))
        {
            Scope = $"feedback {record.Id}",
        };
        return await keeper.Ledger!.AppendAsync(entry, retry, CancellationToken.None) switch
        {
            AppendResult.Appended added => Recorded(record.Id, added.Id),
            AppendResult.Repeated { First: var first } => Recorded(record.Id, first.Id),
            AppendResult.KeyTaken { First: var first } =>
                LedgerRoute.No(StatusCodes.Status422UnprocessableEntity, RecordMessages.RetryKeyTaken(first.ToString())),
            AppendResult.Refused { Messages: var messages } => Wrong(messages),
            var other => throw new InvalidOperationException($"{other.GetType().Name} is not foreseen."),
        };
    }

    private static async Task<IReadOnlyCollection<string>> ReasonsAsync(LedgerKeeper keeper, LedgerRecord record) =>
        (await keeper.Packs!.FindAsync(record.Pack!.TextDigest))?.Pack?.Pack.Reasons.Keys.ToArray() ?? [];

    private static (FeedbackEntry? Entry, ImmutableArray<Message> Wrong) Entry(
        FeedbackRequest request, LedgerRecord record, RecordBody body, IReadOnlyCollection<string> reasons, string actor)
    {
        var known = SuggestionNames.In(body.Answer);
        var wrong = request.Suggestions.Where(s => !known.ContainsKey(s.Name))
            .Select(s => RecordMessages.NoSuchSuggestion(s.Name, [.. known.Keys])).ToList();
        if (reasons.Count == 0 && request.Suggestions.Any(s => s.Verdict != "accepted"))
            wrong.Add(RecordMessages.NoReasons(record.Pack!.Name));
        if (wrong.Count > 0) return (null, [.. wrong]);
        return (new FeedbackEntry
        {
            Reading = record.Id,
            Actor = actor,
            Reasons = [.. reasons],
            Suggestions =
            [
                .. request.Suggestions.Select(s => new SuggestionFeedback(s.Name, known[s.Name], s.Verdict == "accepted", s.Reason)),
            ],
        }, []);
    }

    private static IResult Wrong(ImmutableArray<Message> messages) =>
        new Problem(StatusCodes.Status422UnprocessableEntity, RecordMessages.FeedbackWrong(messages.Length), messages).AsResult();

    private static IResult Recorded(Guid reading, Guid record) =>
        TypedResults.Created($"{ReadingEndpoints.Path}/{reading}/feedback", new FeedbackRecorded(record, reading));

    private static async Task<IResult> ListAsync(LedgerKeeper keeper, string id)
    {
        const int most = 1000;
        var (record, no) = await FindReadingAsync(keeper, id);
        if (record is null) return no!;
        var found = new List<RecordResponse>();
        var query = new LedgerQuery { Kind = RecordKind.Feedback, About = record.Id, Limit = most };
        do
        {
            var page = await keeper.Ledger!.SearchAsync(query);
            found.AddRange(page.Records.Select(r => RecordResponse.Of(r)));
            query = query with { Cursor = page.Next };
        }
        while (query.Cursor is not null);
        return LedgerRoute.Json(new FeedbackResponse(found));
    }

    private static async Task<(LedgerRecord? Record, IResult? No)> FindReadingAsync(LedgerKeeper keeper, string written)
    {
        var address = new Address();
        var id = address.Id(written);
        if (address.Wrong is { } wrong) return (null, LedgerRoute.No(StatusCodes.Status400BadRequest, wrong));
        return await keeper.Open().FindAsync(id) switch
        {
            null => (null, LedgerRoute.No(StatusCodes.Status404NotFound, RecordMessages.NoSuchRecord(written))),
            { Kind: not RecordKind.Reading } => (null, LedgerRoute.No(StatusCodes.Status404NotFound, RecordMessages.NotAReading(written))),
            var reading => (reading, null),
        };
    }
}

/// <param name="Id">Of the feedback's own record.</param>
internal sealed record FeedbackRecorded(Guid Id, Guid Reading);

internal sealed record FeedbackResponse(IReadOnlyList<RecordResponse> Feedback);
