using FindingRules.Ledger;
using FindingRules.Service.Readings.Batch;

namespace FindingRules.Service.Records;

/// <summary>Writes record after record, as fast as they are taken and never more than a few ahead.</summary>
internal sealed class ExportResult(RecordLedger ledger, long from) : IResult
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var gone = httpContext.RequestAborted;
        httpContext.Response.ContentType = BatchEndpoint.ContentType;
        var to = httpContext.Response.BodyWriter;
        await foreach (var record in ledger.ExportAsync(from, gone))
        {
            await to.WriteAsync(RecordJson.ToBytes(record), gone);
            await to.WriteAsync("\n"u8.ToArray(), gone);
        }
    }
}
