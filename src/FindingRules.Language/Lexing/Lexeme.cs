using FindingRules.Language.Syntax;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using Sprache;

namespace FindingRules.Language.Lexing;

/// <summary>The smallest parts of a rule. Each takes itself whole or nothing, and the gap behind it.</summary>
internal static class Lexeme
{
    private static readonly Unit[] UnitsLongestFirst = [.. Unit.All.Where(u => u != Unit.Plain).OrderByDescending(u => u.Name.Length)];

    /// <summary>A word of the author: anything but a word of the language.</summary>
    public static readonly Parser<WordSyntax> Name = Scan((text, at) =>
    {
        var end = Letters.EndOfWord(text, at);
        return ReservedWords.Contains(text[at..end]) ? at : end;
    });

    public static readonly Parser<WordSyntax> Number = Scan(Letters.EndOfNumber);

    public static readonly Parser<WordSyntax> UnitName = Scan(EndOfUnit);

    public static readonly Parser<WordSyntax> End = i =>
        i.AtEnd ? Success(i, new WordSyntax("", new TextSpan(i.Position, 0)), i.Position) : Failure(i);

    public static Parser<WordSyntax> Keyword(string word) => Scan((text, at) =>
    {
        var end = at + word.Length;
        return text[at..].StartsWith(word, StringComparison.Ordinal) && IsBoundary(text, end) ? end : at;
    });

    /// <summary>Marks such as <c>&gt;=</c>; a mark that begins a longer one must be tried after it.</summary>
    public static Parser<WordSyntax> Symbol(string symbol) => Scan((text, at) =>
        text[at..].StartsWith(symbol, StringComparison.Ordinal) ? at + symbol.Length : at);

    private static int EndOfUnit(ReadOnlySpan<char> text, int at)
    {
        foreach (var unit in UnitsLongestFirst)
        {
            if (text[at..].StartsWith(unit.Name, StringComparison.Ordinal) && IsUnitBoundary(text, at + unit.Name.Length))
                return at + unit.Name.Length;
        }
        var end = Letters.EndOfWord(text, at);
        return end > at && Unit.Find(text[at..end]) is not null ? end : at;
    }

    private static bool IsUnitBoundary(ReadOnlySpan<char> text, int at) => text[at - 1] == '%' || IsBoundary(text, at);

    private static bool IsBoundary(ReadOnlySpan<char> text, int at) => at >= text.Length || !Letters.IsInsideWord(text, at);

    private delegate int Scanner(ReadOnlySpan<char> text, int at);

    private static Parser<WordSyntax> Scan(Scanner endOf) => i =>
    {
        var end = endOf(i.Source, i.Position);
        if (end == i.Position) return Failure(i);
        var word = new WordSyntax(i.Source[i.Position..end], TextSpan.Between(i.Position, end));
        return Success(i, word, Letters.SkipGaps(i.Source, end));
    };

    private static IResult<WordSyntax> Success(IInput i, WordSyntax word, int next) =>
        Result.Success(word, ((RuleInput)i).At(next));

    private static IResult<WordSyntax> Failure(IInput i) => Result.Failure<WordSyntax>(i, "", []);
}
