using FindingRules.Language.Lexing;
using FindingRules.Language.Syntax;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>phrase = { "earlier" | "ipsilateral" | "contralateral" | "study" } word { word }</summary>
internal static class PhraseGrammar
{
    private static readonly Parser<WordSyntax> Prefix =
        Lexeme.Keyword("ipsilateral")
            .XOr(Lexeme.Keyword("contralateral"))
            .XOr(Lexeme.Keyword("earlier"))
            .XOr(Lexeme.Keyword("study"));

    public static readonly Parser<PhraseSyntax> Phrase = PrefixedPhrase().XOr(PlainPhrase());

    private static Parser<PhraseSyntax> PrefixedPhrase() =>
        from prefix in Prefix
        from more in Prefix.Repeated()
        from phrase in PlainPhrase().Expecting("a finding or a structure")
        select phrase with { Prefixes = [prefix, .. more] };

    private static Parser<PhraseSyntax> PlainPhrase() =>
        from word in Lexeme.Name
        from more in Lexeme.Name.Repeated()
        select new PhraseSyntax([], [word, .. more]);
}
