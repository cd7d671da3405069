using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace FindingRules.Tests.Schemas;

/// <summary>A YAML document as an editor's language server sees it: plain scalars typed by the core rules of YAML 1.2.</summary>
internal static partial class YamlAsJson
{
    public static JsonNode? Read(string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        return Convert(stream.Documents.Single().RootNode);
    }

    private static JsonNode? Convert(YamlNode node) => node switch
    {
        YamlMappingNode mapping => new JsonObject(mapping.Children.Select(c => KeyValuePair.Create(c.Key.ToString(), Convert(c.Value)))),
        YamlSequenceNode sequence => new JsonArray([.. sequence.Children.Select(Convert)]),
        YamlScalarNode { Style: ScalarStyle.Plain } scalar => Plain(scalar.Value ?? ""),
        YamlScalarNode scalar => JsonValue.Create(scalar.Value),
        _ => throw new InvalidOperationException($"There is no JSON for {node.NodeType}."),
    };

    private static JsonValue? Plain(string text) => text switch
    {
        "" or "~" or "null" or "Null" or "NULL" => null,
        "true" or "True" or "TRUE" => JsonValue.Create(true),
        "false" or "False" or "FALSE" => JsonValue.Create(false),
        _ when WholeNumber().IsMatch(text) => JsonValue.Create(long.Parse(text, CultureInfo.InvariantCulture)),
        _ when Number().IsMatch(text) => JsonValue.Create(decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture)),
        _ => JsonValue.Create(text),
    };

    [GeneratedRegex("^[-+]?[0-9]{1,18}$")]
    private static partial Regex WholeNumber();

    [GeneratedRegex(@"^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?$")]
    private static partial Regex Number();
}
