using FindingRules.Model.Text;

namespace FindingRules.Cli.Usage;

/// <summary>The command line as a text of its own, so that messages can point into it.</summary>
internal sealed class WrittenCommand
{
    private const string Start = "findingrules";
    private readonly SourceText _text;

    public WrittenCommand(IReadOnlyList<string> arguments)
    {
        _text = new SourceText("command line", string.Join(' ', arguments.Prepend(Start)));
        var words = new List<(string, Location)>();
        var at = Start.Length + 1;
        foreach (var argument in arguments)
        {
            words.Add((argument, new Location(_text, new TextSpan(at, argument.Length))));
            at += argument.Length + 1;
        }
        Words = words;
    }

    public IReadOnlyList<(string Word, Location At)> Words { get; }

    /// <summary>Where one more word would stand.</summary>
    public Location End => new(_text, new TextSpan(_text.Content.Length, 0));

    /// <summary>The last word that says this, alone or after an option's name.</summary>
    public Location Find(string word)
    {
        foreach (var (written, at) in Words.Reverse())
            if (written == word)
                return at;
            else if (written.EndsWith(word, StringComparison.Ordinal))
                return at with { Span = new TextSpan(at.Span.End - word.Length, word.Length) };
        return _text.Whole;
    }
}
