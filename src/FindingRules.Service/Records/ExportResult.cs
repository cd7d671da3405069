using FindingRules.Ledger;
using FindingRules.Ledger.Exporting;
using FindingRules.Service.Readings.Batch;

namespace FindingRules.Service.Records;

/// <summary>Writes record after record, as fast as they are taken and never more than a few ahead.</summary>
internal sealed class ExportResult(RecordLedger ledger, long from) : IResult
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var gone = httpContext.RequestAborted;
        httpContext.Response.ContentType = BatchEndpoint.ContentType;
        await ExportLines.WriteAsync(httpContext.Response.Body, ledger.ExportAsync(from, gone), cancellation: gone);
    }
}
