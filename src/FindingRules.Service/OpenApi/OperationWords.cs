using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FindingRules.Service.OpenApi;

/// <summary>What the routes cannot say of themselves: what their parameters mean, and what is sent and answered.</summary>
internal sealed class OperationWords : IOperationFilter
{
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        foreach (var parameter in operation.Parameters?.OfType<OpenApiParameter>() ?? [])
        {
            parameter.Description = RecordWords.Meaning(operation.OperationId, parameter.Name) ?? Meaning(parameter);
            // A route with a part that takes slashes counts it as optional; the description has no such thing.
            if (parameter.Schema is OpenApiSchema schema) schema.Default = null;
        }
        if (operation.OperationId == "CreateReading") DescribeReading(operation);
        if (operation.OperationId == "ExplainReading") DescribeExplanation(operation);
        if (operation.OperationId == "CreateReadings") DescribeReadings(operation);
        if (operation.OperationId == "GetStudySchema") SetSchema(operation, new OpenApiSchema { Type = JsonSchemaType.Object });
    }

    private static string Meaning(OpenApiParameter parameter) => (parameter.In, parameter.Name) switch
    {
        (ParameterLocation.Query, "pack") =>
            "Name or text digest of the pack in force that reads the study. It may be left out where the study names the pack, "
            + "or where only one is in force.",
        (ParameterLocation.Query, "question") =>
            "`trace`: why the reading says each line. `why`: how a rule came out. `why-not`: what keeps a rule from applying, and the "
            + "smallest changes after which it would. `what-if`: what would take back each suggestion. `ask-next`: what each missing "
            + "finding would lead to. Where it is left out: `why` with a rule, `trace` without.",
        (ParameterLocation.Query, "rule") => "Id of the rule that `why` and `why-not` ask about, such as `CUFF-010` or `tear-size.medium`.",
        (ParameterLocation.Query, "subject") =>
            "The subject that is asked about, such as `right supraspinatus`; every one that the rule is for, where it is left out.",
        (_, "pack") => "Name of a pack in force, or text digest of a pack in force or seen since the service started.",
        (ParameterLocation.Query, "record") => "`false` keeps the answer out of the ledger, for trying out.",
        (ParameterLocation.Header, _) =>
            "A word of the sender's choice, up to 255 characters: a request that comes again with it gets the first answer.",
        (_, "path") => "Path of the file in the pack, such as `rules.yaml`.",
        (_, "id") => "Id of the rule, such as `CUFF-010`, or of a band of a scale, such as `tear-size.medium`.",
        (_, "code") => "Such as `FR7010`.",
        _ => throw new InvalidOperationException($"the parameter {parameter.Name} has no description"),
    };

    private static void DescribeReading(OpenApiOperation operation)
    {
        operation.RequestBody = new OpenApiRequestBody
        {
            Required = true,
            Description = "One study. The schema of a study for one pack is at `/v1/packs/{pack}/study-schema`.",
            Content = new Dictionary<string, IOpenApiMediaType>
            {
                ["application/json"] = new OpenApiMediaType { Schema = new OpenApiSchemaReference(SchemaImport.Study) },
            },
        };
        SetSchema(operation, new OpenApiSchemaReference(SchemaImport.Reading));
        // An explanation is asked for like a reading, and is never recorded.
        if (operation.Responses!.ContainsKey("201")) SetSchema(operation, new OpenApiSchemaReference(SchemaImport.Reading), "201");
        Say(operation, "200", "The reading, not recorded.");
        Say(operation, "201", "The reading, recorded; `Location` leads to the record.");
        Say(operation, "400", "The body is not JSON, or the address says something unknown.");
        Say(operation, "404", "The pack that the address names is not in force.");
        Say(operation, "413", "The study is too large.");
        Say(operation, "415", "The body is not said to be JSON.");
        Say(operation, "410", "It was answered before, and the record of the answer was erased since.");
        Say(operation, "422", "The study has mistakes, it does not say which pack reads it, or the key was used for another request.");
        Say(operation, "500", "The evaluation failed.");
        Say(operation, "503", "No pack is in force, the evaluation was too late, too many studies came at once, or the "
            + "ledger cannot record.");
    }

    private static void DescribeExplanation(OpenApiOperation operation)
    {
        DescribeReading(operation);
        SetSchema(operation, new OpenApiSchemaReference(SchemaImport.Explanation));
        Say(operation, "200", "The explanation.");
        Say(operation, "400", "The body is not JSON, or the address asks no question that can be answered.");
        Say(operation, "404", "The pack is not in force, it has no such rule, or the study has no such subject.");
    }

    private static void DescribeReadings(OpenApiOperation operation)
    {
        operation.Parameters = [.. (operation.Parameters ?? []).Where(p => p.In != ParameterLocation.Header)];
        operation.RequestBody!.Description = "A study a line, each as for one reading. Blank lines are passed over.";
        Say(operation, "200", "A line for each study: a reading, or why there is none.");
        Say(operation, "400", "The address says something unknown.");
        Say(operation, "404", "The pack that the address names is not in force.");
        Say(operation, "415", "The body is not said to be NDJSON.");
        Say(operation, "503", "No pack is in force.");
    }

    private static void SetSchema(OpenApiOperation operation, IOpenApiSchema schema, string status = "200")
    {
        foreach (var media in operation.Responses![status].Content!.Values.OfType<OpenApiMediaType>()) media.Schema = schema;
    }

    private static void Say(OpenApiOperation operation, string status, string words)
    {
        if (operation.Responses!.TryGetValue(status, out var response)) response.Description = words;
    }
}
