using System.CommandLine;

namespace FindingRules.Cli.Usage;

internal static class OutputOption
{
    private const string Json = "json";

    public static WordOption Create() => new("--output", ["text", Json]);

    public static bool IsJson(this ParseResult result, WordOption output) => result.GetValue(output) == Json;
}
