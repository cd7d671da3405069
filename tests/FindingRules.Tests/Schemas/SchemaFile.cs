using System.Collections.Immutable;
using System.Text.Json.Nodes;
using FindingRules.Testing;
using Json.Schema;

namespace FindingRules.Tests.Schemas;

/// <summary>A schema of the folder <c>schemas</c>, with the ones it refers to.</summary>
internal sealed class SchemaFile
{
    private static readonly ImmutableSortedDictionary<string, SchemaFile> All = Load();
    private readonly JsonSchema _schema;

    private SchemaFile(string text, JsonSchema schema) => (Json, _schema) = (JsonNode.Parse(text)!.AsObject(), schema);

    /// <summary>The schema as it is written.</summary>
    public JsonObject Json { get; }

    /// <summary>What each schema is called: rules for <c>rules.schema.json</c>.</summary>
    public static IEnumerable<string> Names => All.Keys;

    public static SchemaFile Of(string name) => All[name];

    /// <summary>A schema as if it lay beside the others.</summary>
    public static SchemaFile From(string text)
    {
        var schema = JsonSchema.FromText(text);
        schema.BaseUri = new UriBuilder(Uri.UriSchemeFile, "") { Path = Repository.PathOf("schemas", "beside.schema.json") }.Uri;
        return new SchemaFile(text, schema);
    }

    /// <summary>What is wrong, one line for each place; nothing where the document is right.</summary>
    public ImmutableArray<string> Errors(JsonNode? document)
    {
        if (_schema.Evaluate(document, Asking(OutputFormat.Flag)).IsValid) return [];
        var errors = _schema.Evaluate(document, Asking(OutputFormat.List)).Details
            .Where(d => d.HasErrors)
            .SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Key}: {e.Value}"));
        return [.. errors.DefaultIfEmpty("not valid")];
    }

    private static EvaluationOptions Asking(OutputFormat format)
    {
        var options = new EvaluationOptions { OutputFormat = format };
        foreach (var schema in All.Values) options.SchemaRegistry.Register(schema._schema);
        return options;
    }

    private static ImmutableSortedDictionary<string, SchemaFile> Load() => Repository.Files("schemas", "*.schema.json")
        .ToImmutableSortedDictionary(
            path => Path.GetFileName(path).Replace(".schema.json", "", StringComparison.Ordinal),
            path => new SchemaFile(File.ReadAllText(path), JsonSchema.FromFile(path)),
            StringComparer.Ordinal);
}
