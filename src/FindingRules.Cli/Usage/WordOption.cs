using System.Collections.Immutable;
using System.CommandLine;

namespace FindingRules.Cli.Usage;

/// <summary>An option whose value is one of a few words.</summary>
internal sealed class WordOption : Option<string?>
{
    public WordOption(string name, ImmutableArray<string> words)
        : base(name)
    {
        Words = words;
        HelpName = string.Join(" or ", words);
        Arity = ArgumentArity.ExactlyOne;
    }

    public ImmutableArray<string> Words { get; }
}
