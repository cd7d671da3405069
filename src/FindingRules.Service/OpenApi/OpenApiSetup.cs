using FindingRules.Model.Packs;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FindingRules.Service.OpenApi;

/// <summary>The description of the interface, and the page that shows it.</summary>
internal static class OpenApiSetup
{
    private const string Document = "v1";

    private const string About = $"""
        Structured findings of a musculoskeletal study in; suggested impressions, next steps, cautions and what is still
        missing out, each with the rules that it rests on.

        **{Pack.StandingNotice}**

        Studies carry an opaque key and nothing that says who the patient is. Whatever goes wrong is answered with problem
        details (RFC 9457) that carry a message code; where there is no reading the answer says so. Examples are invented.
        """;

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
            o.HeadContent = "<style>.swagger-ui .topbar { display: none }</style>";
            o.DefaultModelsExpandDepth(0);
            o.EnableDeepLinking();
            o.EnableTryItOutByDefault();
            o.DisplayRequestDuration();
        });
    }

    private static void Describe(SwaggerGenOptions o)
    {
        o.SwaggerDoc(Document, new OpenApiInfo { Title = "FindingRules", Version = Document, Description = About });
        o.SupportNonNullableReferenceTypes();
        o.NonNullableReferenceTypesAsRequired();
        o.OperationFilter<OperationWords>();
        o.OperationFilter<ExampleFilter>();
        o.DocumentFilter<SchemaImport>();
        o.DocumentFilter<TagOrder>();
    }
}
