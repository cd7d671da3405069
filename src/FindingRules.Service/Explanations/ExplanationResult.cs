using FindingRules.Explaining;
using FindingRules.Model.Explanations;

namespace FindingRules.Service.Explanations;

/// <summary>An explanation as the command line writes it, byte for byte.</summary>
internal sealed class ExplanationResult(Explanation explanation) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var bytes = ExplanationJson.ToBytes(explanation);
        httpContext.Response.ContentType = "application/json; charset=utf-8";
        httpContext.Response.ContentLength = bytes.Length;
        return httpContext.Response.Body.WriteAsync(bytes, httpContext.RequestAborted).AsTask();
    }
}
