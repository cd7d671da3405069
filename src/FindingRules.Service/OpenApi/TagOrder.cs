using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FindingRules.Service.OpenApi;

/// <summary>The groups of operations, what is used most first.</summary>
internal sealed class TagOrder : IDocumentFilter
{
    public const string Readings = "Readings";
    public const string Records = "Records";
    public const string Packs = "Packs";
    public const string Codes = "Codes";
    public const string Operation = "Operation";

    private static readonly (string Name, string About)[] Groups =
    [
        (Readings, "Studies in, readings out."),
        (Records, "Every answer kept, provable and repeatable."),
        (Packs, "What is in force, and the exact texts behind it."),
        (Codes, "What the messages mean."),
        (Operation, "Whether the service is well."),
    ];

    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context) =>
        swaggerDoc.Tags = new HashSet<OpenApiTag>(Groups.Select(g => new OpenApiTag { Name = g.Name, Description = g.About }));
}
