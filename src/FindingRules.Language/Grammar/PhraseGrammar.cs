using System.Collections.Immutable;
using FindingRules.Language.Lexing;
using FindingRules.Language.Syntax;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>phrase = { "earlier" | "ipsilateral" | "contralateral" | "study" } word { word }</summary>
internal static class PhraseGrammar
{
    private static readonly Parser<bool> AssessedAhead =
        (from not in Lexeme.Keyword("not").Maybe() from assessed in Lexeme.Keyword("assessed") select assessed).Ahead();

    private static readonly Parser<WordSyntax> Prefix =
        Lexeme.Keyword("ipsilateral")
            .XOr(Lexeme.Keyword("contralateral"))
            .XOr(Lexeme.Keyword("earlier"))
            .XOr(Lexeme.Keyword("study"));

    public static readonly Parser<ImmutableArray<WordSyntax>> Words =
        from word in Lexeme.Name
        from more in Lexeme.Name.Repeated()
        select more.Insert(0, word);

    public static readonly Parser<PhraseSyntax> Phrase = PrefixedPhrase().XOr(Words.Select(words => new PhraseSyntax([], words)));

    private static Parser<PhraseSyntax> PrefixedPhrase() =>
        from prefix in Prefix
        from more in Prefix.Repeated()
        from words in Words.XOr(AssessedAhead.Select(_ => ImmutableArray<WordSyntax>.Empty))
            .Expecting("a finding or a structure")
        select new PhraseSyntax([prefix, .. more], words);

}
