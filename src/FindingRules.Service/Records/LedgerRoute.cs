using FindingRules.Ledger;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Problems;

namespace FindingRules.Service.Records;

/// <summary>What all questions to the ledger have in common.</summary>
internal static class LedgerRoute
{
    /// <summary>Answers for a service without a ledger and for an address with unknown parts, and lets nobody keep the answer.</summary>
    public static RouteHandlerBuilder ToLedger(this RouteHandlerBuilder route, params string[] parameters) => route
        .AddEndpointFilter(async (call, next) =>
        {
            var context = call.HttpContext;
            context.Response.Headers.CacheControl = "no-store";
            if (context.RequestServices.GetRequiredService<LedgerKeeper>().Ledger is null)
                return No(StatusCodes.Status404NotFound, RecordMessages.NoLedger());
            return context.Request.Query.Keys.FirstOrDefault(k => !parameters.Contains(k)) is { } unknown
                ? No(StatusCodes.Status400BadRequest, ServiceMessages.UnknownParameter(unknown, parameters))
                : await next(call);
        })
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status404NotFound)
        .ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    public static IResult No(int status, Message cause) => new Problem(status, cause).AsResult();

    public static RecordLedger Open(this LedgerKeeper keeper) => keeper.Ledger!;

    public static IResult Json<T>(T value) => TypedResults.Json(value, ServiceJson.Options);
}
