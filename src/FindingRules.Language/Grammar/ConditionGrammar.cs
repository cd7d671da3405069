using System.Collections.Immutable;
using FindingRules.Language.Lexing;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>
/// chain      = term { ("and" | "or") term }
/// term       = [ "not" ] ( quantified | "no" phrase | "assessed" | statement )
/// quantified = ( "any" | "every" | "no" | "at least" number ) word "where" "(" chain ")"
/// </summary>
internal static class ConditionGrammar
{
    private static readonly Parser<ImmutableArray<WordSyntax>> Range =
        PhraseGrammar.Words.Expecting("a kind or a structure");

    private static readonly Parser<BracketSyntax> Where =
        from word in Lexeme.Keyword("where").Expecting("`where`")
        from bracket in QuantityGrammar.Bracket.Expecting("`(`")
        select bracket;

    private static readonly Parser<BodySyntax> AnyOrEvery =
        from opening in Lexeme.Keyword("any").XOr(Lexeme.Keyword("every"))
        from range in Range
        from clause in Where
        select new QuantifiedSyntax(opening, opening.Text == "any" ? Quantifier.Any : Quantifier.Every, null, range, clause);

    private static readonly Parser<BodySyntax> AtLeast =
        from opening in Lexeme.Keyword("at")
        from least in Lexeme.Keyword("least").Expecting("`least`")
        from count in Lexeme.Number.Expecting("a number")
        from range in Range
        from clause in Where
        select new QuantifiedSyntax(opening, Quantifier.AtLeast, count, range, clause);

    private static readonly Parser<BodySyntax> No =
        from no in Lexeme.Keyword("no")
        from phrase in PhraseGrammar.Phrase.Expecting("a sign", "a kind")
        from clause in phrase.Prefixes.IsEmpty ? Where.Maybe() : Parse.Return<BracketSyntax?>(null)
        select clause is not null
            ? new QuantifiedSyntax(no, Quantifier.No, null, phrase.Words, clause)
            : (BodySyntax)new NoSyntax(no, phrase);

    private static readonly Parser<BodySyntax> Body =
        AnyOrEvery.XOr(AtLeast).XOr(No).XOr(StatementGrammar.AssessedAlone).XOr(StatementGrammar.Statement)
            .Expecting("a finding", "a structure", "`(`");

    private static readonly Parser<TermSyntax> Term =
        from not in Connecting.Not.Maybe()
        from body in Body
        select new TermSyntax(not, body);

    public static readonly Parser<ChainSyntax> Chain =
        Term.ChainedBy(Connecting.AndOr)
            .Select(c => new ChainSyntax([c.First, .. c.More.Select(m => m.Part)], [.. c.More.Select(m => m.By)]));
}
