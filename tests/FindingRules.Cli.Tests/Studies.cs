namespace FindingRules.Cli.Tests;

/// <summary>Studies for the example pack, each on one line.</summary>
internal static class Studies
{
    public const string Subluxed =
        """{ "study": "S-1", "subjects": [{ "structure": "biceps", "side": "right", "findings": { "position": "subluxed" } }] }""";

    public const string Normal =
        """{ "study": "S-2", "subjects": [{ "structure": "biceps", "side": "right", "findings": { "position": "in-groove" } }] }""";

    public const string Misspelt =
        """{ "study": "S-3", "subjects": [{ "structure": "biceps", "side": "right", "findings": { "position": "sublux" } }] }""";

    public const string FullThickness =
        """
        {
          "study": "S-7F3K",
          "protocols": [{ "protocol": "shoulder", "side": "right" }],
          "facts": { "arm-position": "modified-crass" },
          "subjects": [
            { "structure": "supraspinatus", "side": "right",
              "findings": { "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists", "tear-length": "29.5 mm" } },
            { "structure": "biceps", "side": "right", "findings": { "position": "subluxed" } }
          ]
        }
        """;
}
