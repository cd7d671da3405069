using System.Text;
using FindingRules.Ledger.Correlation;
using FindingRules.Ledger.Records;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using FindingRules.Service.Problems;
using Microsoft.AspNetCore.Mvc;

namespace FindingRules.Service.Readings;

/// <summary>What address and headers of a request for readings say beside the study.</summary>
internal sealed record ReadingRequest(string? Pack, bool IsRecorded, string? Key, TraceContext? Correlation, Problem? Problem)
{
    public const string PackParameter = "pack";
    public const string RecordParameter = "record";
    public const string KeyHeader = "Idempotency-Key";
    private const int LongestKey = 255;
    private static readonly string[] Parameters = [PackParameter, RecordParameter];

    public static ReadingRequest Of(HttpRequest request, ReadingParameters said)
    {
        var query = request.Query;
        if (query.Keys.FirstOrDefault(k => !Parameters.Contains(k)) is { } unknown)
            return Wrong(ServiceMessages.UnknownParameter(unknown, Parameters));
        var record = said.Record ?? "";
        if (record is not ("" or "true" or "false"))
            return Wrong(RecordMessages.AddressValue(RecordParameter, record, "`true` or `false`"));
        var keys = request.Headers[KeyHeader];
        if (keys.Count > 0 && !IsKey(keys)) return Wrong(RecordMessages.RetryKeyForm());
        return new ReadingRequest(
            said.Pack, record != "false", said.Key,
            CorrelationOf(request), null);
    }

    /// <summary>Null where the request may not be sent again without harm, for it has no key.</summary>
    public RetryKey? KeyFor(SourceText study, string actor) =>
        Key is null ? null : new RetryKey(actor, Key, Encoding.UTF8.GetBytes($"{Pack}\n{study.Content}"));

    public static bool IsKey(Microsoft.Extensions.Primitives.StringValues keys) => keys is [{ } one] && IsKey(one);

    /// <summary>The trace that the request belongs to; null where it says none.</summary>
    public static TraceContext? CorrelationOf(HttpRequest request) =>
        TraceContext.Read(Values(request, "traceparent"), Values(request, "tracestate"));

    private static bool IsKey(string text) => text.Length is > 0 and <= LongestKey && text.All(c => c is >= ' ' and <= '~');

    private static string[] Values(HttpRequest request, string header) => [.. request.Headers[header].OfType<string>()];

    private static ReadingRequest Wrong(Model.Messages.Message message) =>
        new(null, false, null, null, new Problem(StatusCodes.Status400BadRequest, message));
}

/// <summary>The same, as the framework takes it from a request.</summary>
internal readonly record struct ReadingParameters(
    [property: FromQuery(Name = ReadingRequest.PackParameter)] string? Pack,
    [property: FromQuery(Name = ReadingRequest.RecordParameter)] string? Record,
    [property: FromHeader(Name = ReadingRequest.KeyHeader)] string? Key);
