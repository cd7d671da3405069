using System.Security.Cryptography;
using System.Text.Json;
using FindingRules.Service.Problems;
using Microsoft.Net.Http.Headers;

namespace FindingRules.Service.Packs;

/// <summary>
/// An answer that may be kept: named by a digest it never changes, named by a pack's name it must be asked for again.
/// Whoever has it already is told so with 304.
/// </summary>
internal sealed class LastingResult(byte[] body, string contentType, bool isForEver) : IResult
{
    private const string ForEver = "public, max-age=31536000, immutable";

    public static LastingResult Json<T>(T value, bool isForEver) =>
        new(JsonSerializer.SerializeToUtf8Bytes(value, ServiceJson.Options), "application/json; charset=utf-8", isForEver);

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var tag = $"\"{Convert.ToHexStringLower(SHA256.HashData(body).AsSpan(0, 16))}\"";
        httpContext.Response.Headers.CacheControl = isForEver ? ForEver : "no-cache";
        var result = TypedResults.Bytes(body, contentType, entityTag: new EntityTagHeaderValue(tag));
        return result.ExecuteAsync(httpContext);
    }
}
