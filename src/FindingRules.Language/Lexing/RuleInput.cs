using Sprache;

namespace FindingRules.Language.Lexing;

/// <summary>
/// A place in the text of a rule. Stands in for Sprache's own input because that one allocates a dictionary for each
/// character, and because every place of one text shares the expectations that failed there.
/// </summary>
internal sealed class RuleInput(string source, int position, Expectations expectations) : IInput
{
    private Dictionary<object, object>? _memos;

    public string Source { get; } = source;

    public int Position { get; } = position;

    public Expectations Expectations { get; } = expectations;

    public bool AtEnd => Position == Source.Length;

    public char Current => Source[Position];

    public int Line => 1;

    public int Column => Position + 1;

    public IDictionary<object, object> Memos => _memos ??= [];

    public ReadOnlySpan<char> Rest => Source.AsSpan(Position);

    public IInput Advance() => At(Position + 1);

    public RuleInput At(int position) => new(Source, position, Expectations);

    public bool Equals(IInput? other) => other is RuleInput input && input.Position == Position && input.Source == Source;

    public override bool Equals(object? obj) => Equals(obj as IInput);

    public override int GetHashCode() => Position;
}
