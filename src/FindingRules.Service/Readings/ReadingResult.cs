using FindingRules.Model.Readings;
using FindingRules.Output;

namespace FindingRules.Service.Readings;

/// <summary>A reading as the command line writes it, byte for byte.</summary>
internal sealed class ReadingResult(Reading reading) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var bytes = ReadingJson.ToBytes(reading);
        httpContext.Response.ContentType = "application/json; charset=utf-8";
        httpContext.Response.ContentLength = bytes.Length;
        return httpContext.Response.Body.WriteAsync(bytes, httpContext.RequestAborted).AsTask();
    }
}
