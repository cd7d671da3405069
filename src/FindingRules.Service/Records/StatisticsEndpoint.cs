using FindingRules.Ledger.Statistics;
using FindingRules.Service.OpenApi;

namespace FindingRules.Service.Records;

internal static class StatisticsEndpoint
{
    public static void MapStatistics(this IEndpointRouteBuilder routes) => routes.MapGet("/v1/rules/{id}/statistics", GetAsync)
        .WithTags(TagOrder.Records).ToLedger()
        .WithName("GetRuleStatistics")
        .WithSummary("How a rule is doing, by pack version and month.")
        .WithDescription(
            "Fired, shown, accepted, overridden and why, borderline, unknown for want of what. "
            + "Whatever the ledger holds is counted, of packs in force or "
            + "not; a rule that it never met has counts of 0.")
        .Produces<RuleStatistics>();

    private static async Task<IResult> GetAsync(string id, LedgerKeeper keeper) =>
        LedgerRoute.Json(await keeper.Open().GetStatisticsAsync(id));
}
