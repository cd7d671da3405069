using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FindingRules.Benchmarks.Http;

/// <summary>
/// What the framework itself takes for a request of this size: the study is parsed into plain records and written back, with
/// serializers generated at build time. Nothing is read, checked or answered.
/// </summary>
internal static partial class BareEndpoint
{
    public static WebApplication Build(string url)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls(url);
        builder.Logging.ClearProviders();
        builder.Services.ConfigureHttpJsonOptions(json => json.SerializerOptions.TypeInfoResolverChain.Insert(0, Shapes.Default));
        var app = builder.Build();
        app.MapPost("/v1/readings", static (SentStudy study) => TypedResults.Ok(study));
        app.MapGet("/readyz", static () => TypedResults.Ok());
        return app;
    }

    internal sealed record SentStudy(
        string Study, string? Pack, JsonElement? Protocols, Dictionary<string, string>? Facts, List<SentSubject> Subjects);

    internal sealed record SentSubject(string Structure, string? Side, bool? Normal, Dictionary<string, JsonElement>? Findings);

    [JsonSourceGenerationOptions(JsonSerializerDefaults.Web)]
    [JsonSerializable(typeof(SentStudy))]
    private sealed partial class Shapes : JsonSerializerContext;
}
