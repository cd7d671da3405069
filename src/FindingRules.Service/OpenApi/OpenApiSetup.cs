using FindingRules.Model.Packs;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FindingRules.Service.OpenApi;

/// <summary>The description of the interface, and the page that shows it.</summary>
internal static class OpenApiSetup
{
    private const string Document = "v1";

    public static void AddOpenApiDocument(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.AddSwaggerGen(Describe);
    }

    public static void UseOpenApi(this WebApplication app)
    {
        app.UseSwagger(o =>
        {
            o.RouteTemplate = "openapi/{documentName}.json";
            o.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        });
        app.UseSwaggerUI(o =>
        {
            o.RoutePrefix = "";
            o.SwaggerEndpoint($"openapi/{Document}.json", "FindingRules v1");
            o.DocumentTitle = "FindingRules";
        });
    }

    private static void Describe(SwaggerGenOptions o)
    {
        o.SwaggerDoc(Document, new OpenApiInfo
        {
            Title = "FindingRules",
            Version = Document,
            Description = Pack.StandingNotice,
        });
        o.SupportNonNullableReferenceTypes();
    }
}
