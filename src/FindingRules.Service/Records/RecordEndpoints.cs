using FindingRules.Ledger.Records;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Problems;
using FindingRules.Service.Readings;

namespace FindingRules.Service.Records;

/// <summary>One record: what it holds, why it says so, and that it is in the tree.</summary>
internal static class RecordEndpoints
{
    public static void MapRecords(this IEndpointRouteBuilder routes)
    {
        var records = routes.MapGroup($"{ReadingEndpoints.Path}/{{id}}").WithTags(TagOrder.Records);
        records.MapGet("", FindAsync).ToLedger()
            .WithName("GetRecord")
            .WithSummary("The record of a reading: the study, what was answered, with which pack, when, and what replaced it since.")
            .Produces<RecordResponse>();
        records.MapGet("trace", TraceAsync).ToLedger("again")
            .WithName("GetRecordTrace")
            .WithSummary("Why a recorded reading says what it says, from the pack texts as they were then.")
            .WithDescription("With `again=true` the study is evaluated anew, and the answer says whether the reading is "
                + "the same, byte for byte.")
            .Produces<RecordTraceResponse>()
            .ProducesProblem(StatusCodes.Status409Conflict).ProducesProblem(StatusCodes.Status410Gone);
        records.MapGet("proof", ProveAsync).ToLedger("size")
            .WithName("GetRecordProof")
            .WithSummary("A proof (RFC 9162) that the record is in the tree that a signed head vouches for.")
            .WithDescription(
                "The leaf is the SHA-256 of a zero byte and `header`, which names the SHA-256 of the body as its "
                + "`commitment`: of the bytes of `salt`, then of `content`, `answer` and `terms`, each with its length in "
                + "bytes before it as eight bytes, most significant first. Compute both: then the study and the answer are "
                + "those that the head vouches for.")
            .Produces<InclusionResponse>();
    }

    private static Task<IResult> FindAsync(string id, LedgerKeeper keeper) => WithRecordAsync(id, keeper, async record =>
        LedgerRoute.Json(RecordResponse.Of(record, supersededBy: await keeper.Open().FindSupersedingAsync(record))));

    private static Task<IResult> TraceAsync(string id, string? again, LedgerKeeper keeper)
    {
        var address = new Address();
        var wantsAgain = address.Flag("again", again) ?? false;
        if (address.Wrong is { } wrong) return Task.FromResult(LedgerRoute.No(StatusCodes.Status400BadRequest, wrong));
        return WithRecordAsync(id, keeper, async record =>
        {
            var repeated = await Repetition.OfAsync(keeper.Packs!, record, wantsAgain);
            if (repeated.Refusal is { } refusal) return new Problem(StatusOf(record), refusal, repeated.Details).AsResult();
            return LedgerRoute.Json(RecordTraceResponse.Of(record.Id, repeated));
        });
    }

    private static Task<IResult> ProveAsync(string id, string? size, LedgerKeeper keeper)
    {
        var address = new Address();
        var asked = address.Number("size", size, 0, long.MaxValue);
        if (address.Wrong is { } wrong) return Task.FromResult(LedgerRoute.No(StatusCodes.Status400BadRequest, wrong));
        return WithRecordAsync(id, keeper, async record => await keeper.Open().ProveInclusionAsync(record, asked) switch
        {
            { Proof: { } proof } => LedgerRoute.Json(InclusionResponse.Of(proof)),
            var none => LedgerRoute.No(StatusCodes.Status400BadRequest, none.Refusal!),
        });
    }

    private static async Task<IResult> WithRecordAsync(string id, LedgerKeeper keeper, Func<LedgerRecord, Task<IResult>> answer)
    {
        var address = new Address();
        var read = address.Id(id);
        if (address.Wrong is { } wrong) return LedgerRoute.No(StatusCodes.Status400BadRequest, wrong);
        return await keeper.Open().FindAsync(read) is { } record
            ? await answer(record)
            : LedgerRoute.No(StatusCodes.Status404NotFound, RecordMessages.NoSuchRecord(id));
    }

    private static int StatusOf(LedgerRecord record) => record switch
    {
        { Kind: not (RecordKind.Reading or RecordKind.Shadow) } => StatusCodes.Status404NotFound,
        { IsErased: true } => StatusCodes.Status410Gone,
        _ => StatusCodes.Status409Conflict,
    };
}
