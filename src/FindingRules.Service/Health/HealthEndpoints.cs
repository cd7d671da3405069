using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FindingRules.Service.Health;

internal static class HealthEndpoints
{
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/healthz", IsAlive)
            .WithName("IsAlive").WithTags(TagOrder.Operation)
            .WithSummary("The process answers.");
        routes.MapGet("/readyz", IsReady)
            .WithName("IsReady").WithTags(TagOrder.Operation)
            .WithSummary("At least one pack is in force, so studies can be read.")
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
    }

    private static Ok<AliveResponse> IsAlive(HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        return TypedResults.Ok(new AliveResponse("alive"));
    }

    private static Results<Ok<ReadyResponse>, ProblemHttpResult> IsReady(HttpContext context, PackShelf shelf)
    {
        context.Response.Headers.CacheControl = "no-store";
        var names = shelf.State.Names;
        return names.IsEmpty
            ? new Problem(StatusCodes.Status503ServiceUnavailable, ServiceMessages.NoPackInForce()).AsResult()
            : TypedResults.Ok(new ReadyResponse("ready", names));
    }
}

internal sealed record AliveResponse(string Status);

internal sealed record ReadyResponse(string Status, ImmutableArray<string> Packs);
