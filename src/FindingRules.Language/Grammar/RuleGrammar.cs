using System.Collections.Immutable;
using FindingRules.Language.Lexing;
using FindingRules.Language.Syntax;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>
/// rule        = chain "→" conclusion { ";" conclusion }
/// conclusion  = ( "evaluate" | "hold" | "caution" ) word | word [ word ] | word "next" | probability
/// probability = "probability" "from" sum "after" ( "positive" | "negative" ) word
/// </summary>
internal static class RuleGrammar
{
    private static readonly Parser<ConclusionSyntax> Opened =
        Opening("evaluate", "a structure").XOr(Opening("hold", "a topic")).XOr(Opening("caution", "a caution"));

    private static readonly Parser<ConclusionSyntax> Probability =
        from opening in Lexeme.Keyword("probability")
        from comes in Lexeme.Keyword("from").Expecting("`from` and the probability before")
        from before in QuantityGrammar.Sum
        from goes in Lexeme.Keyword("after").Expecting("`after`")
        from sign in Lexeme.Name.Expecting("`positive`", "`negative`")
        from reference in Lexeme.Name.Expecting("a reference")
        select new ConclusionSyntax(opening, [reference], null) { Probability = new ProbabilitySyntax(before, sign) };

    private static readonly Parser<ConclusionSyntax> Plain =
        from words in PhraseGrammar.Words
        from next in Lexeme.Keyword("next").Maybe()
        select new ConclusionSyntax(null, words, next);

    private static readonly Parser<ImmutableArray<ConclusionSyntax>> Conclusions =
        Opened.XOr(Probability).XOr(Plain).Expecting("a conclusion").ChainedBy(Lexeme.Symbol(";").Expecting("`;`"))
            .Select(c => c.More.Select(m => m.Part).ToImmutableArray().Insert(0, c.First));

    public static readonly Parser<RuleSyntax> Rule =
        from condition in ConditionGrammar.Chain
        from arrow in Connecting.Arrow
        from conclusions in Conclusions
        from end in Connecting.End
        select new RuleSyntax(condition, conclusions);

    public static readonly Parser<ChainSyntax> Condition =
        from condition in ConditionGrammar.Chain
        from end in Connecting.End
        select condition;

    public static readonly Parser<OperandSyntax> Expression =
        from expression in QuantityGrammar.Sum
        from end in Connecting.End
        select expression;

    public static readonly Parser<ScopeSyntax> Scope =
        from scope in Lexeme.Keyword("study").Select(_ => new ScopeSyntax([]))
            .XOr(from each in Lexeme.Keyword("each")
                 from words in PhraseGrammar.Words.Expecting("a kind", "a structure")
                 select new ScopeSyntax(words))
            .Expecting("`each` with a kind or a structure", "`study`")
        from end in Connecting.End
        select scope;

    private static Parser<ConclusionSyntax> Opening(string word, string what) =>
        from opening in Lexeme.Keyword(word)
        from words in PhraseGrammar.Words.Expecting(what)
        select new ConclusionSyntax(opening, words, null);
}
