namespace FindingRules.Service.Readings;

/// <summary>A reading as the command line writes it, byte for byte; where it was recorded, with the address of its record.</summary>
internal sealed class ReadingResult(ReadOnlyMemory<byte> reading, Guid? record) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        if (record is { } id)
        {
            response.StatusCode = StatusCodes.Status201Created;
            response.Headers.Location = $"{ReadingEndpoints.Path}/{id}";
        }
        response.ContentType = "application/json; charset=utf-8";
        response.ContentLength = reading.Length;
        return response.Body.WriteAsync(reading, httpContext.RequestAborted).AsTask();
    }
}
