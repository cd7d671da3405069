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

    /// <summary>How many were known of this place; what is added later can be taken back to this number.</summary>
    public int CountAt(int position) => position == Position ? _words.Count : 0;

    /// <summary>Says it in the words of the whole instead of those of its parts.</summary>
    public void Rename(int position, int countBefore, params ReadOnlySpan<string> words)
    {
        if (position == Position) _words.RemoveRange(countBefore, _words.Count - countBefore);
        foreach (var word in words) Add(position, word);
    }

    private void Add(int position, string what)
    {
        if (position < Position) return;
        if (position > Position) _words.Clear();
        Position = position;
        if (!_words.Contains(what)) _words.Add(what);
    }
}
