using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using FindingRules.Service.Records;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FindingRules.Service.Health;

internal static class HealthEndpoints
{
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/healthz", IsAlive)
            .WithName("IsAlive").WithTags(TagOrder.Operation)
            .WithSummary("The process answers.");
        routes.MapGet("/readyz", IsReadyAsync)
            .WithName("IsReady").WithTags(TagOrder.Operation)
            .WithSummary("At least one pack is in force and the ledger can be written, so studies can be read.")
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
    }

    private static Ok<AliveResponse> IsAlive(HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        return TypedResults.Ok(new AliveResponse("alive"));
    }

    private static async Task<Results<Ok<ReadyResponse>, ProblemHttpResult>> IsReadyAsync(
        HttpContext context, PackShelf shelf, LedgerProbe ledger)
    {
        context.Response.Headers.CacheControl = "no-store";
        var names = shelf.State.Names;
        if (names.IsEmpty) return new Problem(StatusCodes.Status503ServiceUnavailable, ServiceMessages.NoPackInForce()).AsResult();
        return await ledger.WhyNotAsync(context.RequestAborted) is { } why
            ? new Problem(StatusCodes.Status503ServiceUnavailable, RecordMessages.LedgerDoesNotWork(why.Code)).AsResult()
            : TypedResults.Ok(new ReadyResponse("ready", names));
    }
}

internal sealed record AliveResponse(string Status);

internal sealed record ReadyResponse(string Status, ImmutableArray<string> Packs);
