using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR2xxx: the form of a rule, before its words mean anything.</summary>
public static class SyntaxMessages
{
    private const int LongestShown = 160;

    public static Message TooLong(Location at, int length, int most) =>
        new(2001, Severity.Error, at, $"the rule has {length} characters, the most is {most}")
        {
            Label = "make two rules of it, or let a topic carry a part",
        };

    public static Message TooDeep(Location at, int most) =>
        new(2002, Severity.Error, at, $"more than {most} brackets stand inside each other")
        {
            Label = "let a topic carry the inner part",
        };

    public static Message TooManyOperators(Location at, int most) =>
        new(2003, Severity.Error, at, $"the rule has more than {most} connecting words and operators")
        {
            Label = "make two rules of it, or let a topic carry a part",
        };

    /// <summary>A character that no rule can hold; <paramref name="instead"/> where the likely wish is known.</summary>
    public static Message ForeignCharacter(Location at, string shown, string codePoint, string? instead) =>
        new(2005, Severity.Error, at, $"the character {(shown.Length == 0 ? "" : $"`{shown}` ")}{codePoint} cannot stand in a rule")
        {
            Label = instead is null
                ? "rules are written with a to z, digits and + - * / < > = ( ) ; % →"
                : $"write `{instead}`",
            Fix = instead is null ? null : new Fix($"write `{instead}`", at, instead),
        };

    public static Message OtherLanguage(Location at, string written, string instead) =>
        new(2006, Severity.Error, at, $"`{written}` is not a mark of the rule language")
        {
            Label = $"write `{instead}`",
            Fix = new Fix($"write `{instead}`", at, instead),
        };

    public static Message Capitals(Location at, string written, string word) =>
        new(2007, Severity.Error, at, $"`{written}` is a word of the rule language in capitals")
        {
            Label = $"write `{word}`",
            Fix = new Fix($"write `{word}`", at, word),
        };

    public static Message DecimalComma(Location at, string written, string withPoint) =>
        new(2008, Severity.Error, at, $"`{written}` has a decimal comma")
        {
            Label = $"write `{withPoint}`",
            Fix = new Fix($"write `{withPoint}`", at, withPoint),
        };

    public static Message TooManyDigits(Location at, int most) =>
        new(2009, Severity.Error, at, $"the number has more than {most} digits");

    public static Message Unexpected(Location at, string found, IReadOnlyCollection<string> expected, Location? openBracket) =>
        new(2010, Severity.Error, at, $"found `{found}`, expected {Alternatives(expected)}")
        {
            Label = found switch
            {
                "," => "conditions are joined by `and` or `or`, what follows by `;`",
                ";" => "`;` stands between what follows; conditions are joined by `and` or `or`",
                _ => null,
            },
            Related = Opened(openBracket),
        };

    public static Message StopsHere(Location at, IReadOnlyCollection<string> expected, Location? openBracket) =>
        new(2011, Severity.Error, at, $"it stops here, expected {Alternatives(expected)}") { Related = Opened(openBracket) };

    /// <summary>Both bracketings, and the one that binds <c>and</c> first as the fix.</summary>
    public static Message MixedAndOr(Location at, Location whole, string andFirst, string orFirst) =>
        new(2012, Severity.Error, at, "`and` and `or` stand side by side, and which belongs together is not said")
        {
            Label = andFirst.Length <= LongestShown
                ? $"write `{andFirst}` or `{orFirst}`"
                : "put brackets around what belongs together",
            Fix = new Fix($"write `{andFirst}`", whole, andFirst),
        };

    public static Message NegatedList(Location at, string notAny, string notFirst) =>
        new(2013, Severity.Error, at, "`not` before a list of values can be read in two ways")
        {
            Label = $"write `{notAny}` or `{notFirst}`",
            Fix = new Fix($"write `{notAny}`", at, notAny),
        };

    public static Message ConditionForQuantity(Location at, string written) =>
        new(2014, Severity.Error, at, $"a quantity is expected here, and `{written}` is a condition")
        {
            Label = "brackets in a calculation hold measures and numbers only",
        };

    public static Message QuantityAlone(Location at, string written) =>
        new(2015, Severity.Error, at, $"`{written}` is a quantity, and a condition is expected")
        {
            Label = $"compare it with something: `{written} above …`",
        };

    public static Message WordsForCalculation(Location at, string written, string wanted) =>
        new(2016, Severity.Error, at, $"`{written}` is a calculation, and {wanted} is expected before these words");

    public static Message DivisorUnclear(Location at, string written, string whole, string stepwise) =>
        new(2017, Severity.Error, at, $"what `{written}` divides by can be read in two ways")
        {
            Label = $"write `{whole}` or `{stepwise}`",
            Fix = new Fix($"write `{whole}`", at, whole),
        };

    private static System.Collections.Immutable.ImmutableArray<RelatedPlace> Opened(Location? bracket) =>
        bracket is null ? [] : [new RelatedPlace(bracket, "this bracket is open")];

    private static string Alternatives(IReadOnlyCollection<string> expected)
    {
        var words = expected.ToArray();
        return words.Length <= 1 ? string.Concat(words) : $"{string.Join(", ", words[..^1])} or {words[^1]}";
    }
}
