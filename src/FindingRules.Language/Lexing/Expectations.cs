namespace FindingRules.Language.Lexing;

/// <summary>
/// What could have stood at the furthest place that was reached. Sprache forgets what an optional part expected once
/// the whole succeeds without it; an author wants to hear of all of them.
/// </summary>
internal sealed class Expectations
{
    private readonly List<string> _words = [];

    public int Position { get; private set; } = -1;

    public IReadOnlyList<string> Words => _words;

    public void Add(int position, string what)
    {
        if (position < Position) return;
        if (position > Position) _words.Clear();
        Position = position;
        if (!_words.Contains(what)) _words.Add(what);
    }
}
