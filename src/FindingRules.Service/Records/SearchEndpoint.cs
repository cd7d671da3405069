using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Readings;
using Microsoft.AspNetCore.Mvc;

namespace FindingRules.Service.Records;

/// <summary>The auditor's question: which readings rested on this, lacked that, were overridden for such a reason.</summary>
internal static class SearchEndpoint
{
    private static readonly string[] Parameters =
    [
        "rule", "revision", "outcome", "missing", "pack", "version", "topic", "value", "subject", "study", "accepted", "reason",
        "from", "to", "cursor", "limit",
    ];

    public static void MapSearch(this IEndpointRouteBuilder routes) => routes.MapGet(ReadingEndpoints.Path, SearchAsync)
        .WithTags(TagOrder.Records).ToLedger(Parameters)
        .WithName("SearchReadings")
        .WithSummary("Recorded readings, the newest first; all that is said must hold.")
        .WithDescription("As long as there is a `next`, there is more: ask again with it as `cursor`, and nothing else changed.")
        .Produces<SearchResponse>();

    private static async Task<IResult> SearchAsync([AsParameters] SearchParameters said, LedgerKeeper keeper)
    {
        var address = new Address();
        var query = Read(said, address);
        if (address.Wrong is { } wrong) return LedgerRoute.No(StatusCodes.Status400BadRequest, wrong);
        var page = await keeper.Open().SearchAsync(query);
        return page.Refusal is { } refusal
            ? LedgerRoute.No(StatusCodes.Status400BadRequest, refusal)
            : LedgerRoute.Json(new SearchResponse([.. page.Records.Select(FoundRecordResponse.Of)], page.Next));
    }

    private static LedgerQuery Read(SearchParameters said, Address address)
    {
        address.Together("revision", said.Revision, "rule", said.Rule);
        address.Together("outcome", said.Outcome, "rule", said.Rule);
        address.Together("version", said.Version, "pack", said.Pack);
        address.Together("value", said.Value, "topic", said.Topic);
        return new LedgerQuery
        {
            Rule = said.Rule,
            Revision = said.Revision,
            Outcome = address.Word<RuleOutcomes?>(
                "outcome", said.Outcome, null, ("fired", RuleOutcomes.Fired), ("shown", RuleOutcomes.Shown),
                ("unknown", RuleOutcomes.Unknown), ("borderline", RuleOutcomes.Borderline)),
            Missing = said.Missing,
            Pack = IsDigest(said.Pack) ? null : said.Pack,
            PackDigest = IsDigest(said.Pack) ? said.Pack : null,
            PackVersion = said.Version,
            Topic = said.Topic,
            Value = said.Value,
            Subject = said.Subject,
            Study = said.Study,
            IsAccepted = address.Flag("accepted", said.Accepted),
            Reason = said.Reason,
            From = address.Moment("from", said.From),
            To = address.Moment("to", said.To),
            Limit = (int)(address.Number("limit", said.Limit, 1, 1000) ?? 50),
            Cursor = said.Cursor,
        };
    }

    private static bool IsDigest(string? pack) => pack is { Length: 64 } && pack.All(char.IsAsciiHexDigitLower);
}

internal readonly record struct SearchParameters(
    [property: FromQuery(Name = "rule")] string? Rule, [property: FromQuery(Name = "revision")] string? Revision,
    [property: FromQuery(Name = "outcome")] string? Outcome, [property: FromQuery(Name = "missing")] string? Missing,
    [property: FromQuery(Name = "pack")] string? Pack, [property: FromQuery(Name = "version")] string? Version,
    [property: FromQuery(Name = "topic")] string? Topic, [property: FromQuery(Name = "value")] string? Value,
    [property: FromQuery(Name = "subject")] string? Subject, [property: FromQuery(Name = "study")] string? Study,
    [property: FromQuery(Name = "accepted")] string? Accepted, [property: FromQuery(Name = "reason")] string? Reason,
    [property: FromQuery(Name = "from")] string? From, [property: FromQuery(Name = "to")] string? To,
    [property: FromQuery(Name = "cursor")] string? Cursor, [property: FromQuery(Name = "limit")] string? Limit);
