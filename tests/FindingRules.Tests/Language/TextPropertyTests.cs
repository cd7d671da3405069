using CsCheck;
using FindingRules.Model.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>Whatever the text, there is a meaning or a message, and never an exception.</summary>
public sealed class TextPropertyTests
{
    private static readonly string[] Scopes = ["study", "each tendon", "each cuff-tendon", "each biceps"];

    private static readonly string[] Words =
    [
        "and", "or", "not", "is", "no", "any", "every", "at", "least", "most", "above", "below", "between", "to", "spans", "reaches",
        "within", "assessed", "assessable", "where", "earlier", "ipsilateral", "contralateral", "study", "evaluate", "next", "hold", "caution",
        "echo", "anechoic", "hypoechoic", "thickness", "shadowing", "fluid", "bursal", "articular", "surface", "position", "subluxed",
        "tear-depth", "full-thickness", "depth-share", "biceps", "subscapularis", "cuff-tendon", "suspected", "wood", "trauma", "age",
        "refer", "thickened", "full", "unheard", "4", "1.5", "0", "mm", "cm", "years", "%", "(", ")", "+", "-", "*", "/", ">", ">=",
        "=", "→", "->", ";", ",", ".", "Echo", "AND", "é", "\n", "\u200f", "\ud83d",
    ];

    private static readonly Gen<(string Scope, string Text)> Soup = Gen.Select(
        Gen.OneOf(Scopes), Gen.OneOf(Words).Array[0, 14], (scope, words) => (scope, string.Join(' ', words)));

    private static readonly Gen<(string Scope, string Text)> Noise = Gen.Select(Gen.OneOf(Scopes), Gen.String[0, 80]);

    [Fact]
    public void Any_soup_of_words_is_answered() => Soup.Sample(AnswersAll, iter: 1_500);

    [Fact]
    public void Any_run_of_characters_is_answered() => Noise.Sample(AnswersAll, iter: 500);

    [Fact]
    public void The_same_soup_gets_the_same_answer() => Soup.Sample(
        given => Reading.Rule(given.Scope, given.Text).Said == Reading.Rule(given.Scope, given.Text).Said, iter: 300);

    private static void AnswersAll((string Scope, string Text) given)
    {
        Reading.Rule(given.Scope, given.Text).AssertAnswered();
        Reading.Condition(given.Scope, given.Text).AssertAnswered();
        Reading.Condition(given.Scope, given.Text, ExampleSymbols.Crowded, new LoadLimits { RuleNesting = 3 }).AssertAnswered();
    }
}
