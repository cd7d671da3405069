using System.CommandLine;
using System.Globalization;

namespace FindingRules.Cli.Usage;

/// <summary>An option whose value is a whole number.</summary>
internal sealed class CountOption : Option<string?>
{
    private readonly long _least;
    private readonly long _most;

    public CountOption(string name, long least, long most)
        : base(name)
    {
        (_least, _most) = (least, most);
        HelpName = most == long.MaxValue ? $"a whole number from {least}" : $"a whole number from {least} to {most}";
        Arity = ArgumentArity.ExactlyOne;
    }

    /// <summary>Null where it is left out.</summary>
    public long? Of(ParseResult result) => Read(result.GetValue(this));

    public bool Takes(string written) => Read(written) is not null;

    private long? Read(string? written) =>
        long.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= _least && number <= _most
            ? number
            : null;
}
