using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Readings.Batch;

namespace FindingRules.Service.Records;

/// <summary>The ledger as a whole: its signed head, that it only grew, its key, and all that is in it.</summary>
internal static class LedgerEndpoints
{
    private const string PemType = "application/x-pem-file";

    public static void MapLedger(this IEndpointRouteBuilder routes)
    {
        var ledger = routes.MapGroup("/v1/ledger").WithTags(TagOrder.Records);
        ledger.MapGet("tree-head", HeadAsync).ToLedger("size")
            .WithName("GetTreeHead")
            .WithSummary("The signed head of the tree: keep it elsewhere, and any change to what it covers can be shown.")
            .Produces<TreeHeadResponse>();
        ledger.MapGet("consistency", ProveAsync).ToLedger("from", "to")
            .WithName("GetConsistency")
            .WithSummary("A proof (RFC 9162) that an earlier tree is the beginning of the present one, or of a later one.")
            .Produces<ConsistencyResponse>();
        ledger.MapGet("public-key", (LedgerKeeper keeper) => TypedResults.Text(keeper.Open().PublicKey.Pem + "\n", PemType)).ToLedger()
            .WithName("GetPublicKey")
            .WithSummary("The key that checks the signatures of tree heads.")
            .Produces<string>(StatusCodes.Status200OK, PemType);
        ledger.MapGet("export", Export).ToLedger("from")
            .WithName("ExportRecords")
            .WithSummary("All records in their order, one to a line, as they were when it was asked.")
            .WithDescription("An answer that ends early broke off; `from` goes on at an index.")
            .Produces<string>(StatusCodes.Status200OK, BatchEndpoint.ContentType);
    }

    private static async Task<IResult> HeadAsync(string? size, LedgerKeeper keeper)
    {
        var address = new Address();
        var asked = address.Number("size", size, 0, long.MaxValue);
        if (address.Wrong is { } wrong) return LedgerRoute.No(StatusCodes.Status400BadRequest, wrong);
        if (await keeper.Open().GetTreeHeadAsync(asked) is { } head) return TypedResults.Bytes(head.ToJson(), "application/json");
        var all = await keeper.Open().GetTreeHeadAsync();
        return LedgerRoute.No(StatusCodes.Status400BadRequest, LedgerUseMessages.SizeBeyondTree(asked!.Value, all!.Size));
    }

    private static async Task<IResult> ProveAsync(string? from, string? to, LedgerKeeper keeper)
    {
        var address = new Address();
        var (first, last) = (address.Number("from", from ?? "", 0, long.MaxValue), address.Number("to", to, 0, long.MaxValue));
        if (address.Wrong is { } wrong) return LedgerRoute.No(StatusCodes.Status400BadRequest, wrong);
        return await keeper.Open().ProveConsistencyAsync(first!.Value, last) switch
        {
            { Proof: { } proof } => LedgerRoute.Json(ConsistencyResponse.Of(proof)),
            var none => LedgerRoute.No(StatusCodes.Status400BadRequest, none.Refusal!),
        };
    }

    private static IResult Export(string? from, LedgerKeeper keeper)
    {
        var address = new Address();
        var first = address.Number("from", from, 0, long.MaxValue) ?? 0;
        return address.Wrong is { } wrong
            ? LedgerRoute.No(StatusCodes.Status400BadRequest, wrong)
            : new ExportResult(keeper.Open(), first);
    }
}
