using FindingRules.Language.Syntax;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Language.Binding;

/// <summary>Decides whether a lone word behind <c>or</c> is a further value of the statement before it.</summary>
internal sealed class ValueJoiner(BindingContext context)
{
    private readonly PhraseResolver _resolver = new(context);

    /// <summary>A word was given to a statement that is itself not understood: what joins what is then unsettled.</summary>
    public bool HasGuessed { get; private set; }

    /// <summary>Whether the term is done with, as a value or with a message; otherwise it is a term of its own.</summary>
    public bool TryJoin(ChainPart part, TermSyntax term)
    {
        if (term is not { Not: null, Body: BareSyntax { Operand: PhraseSyntax { Prefixes: [], Words: [var word] } phrase } })
            return false;
        if (part.Condition is not null || part.Term.Body is not (BareSyntax or IsSyntax)) return false;
        var stands = _resolver.Stands(phrase, new SaysForm([]));
        if (part.Target is null || part.Target.Values.IsEmpty) return part.IsBroken && !stands && Guess();
        return part.Target.Values.Contains(word.Text) ? JoinValue(part, word, stands) : !stands && ReportNeither(part, word);
    }

    private bool JoinValue(ChainPart part, WordSyntax word, bool stands)
    {
        if (stands)
        {
            context.Report(NameMessages.ValueOrStatement(context.At(word.Span), word.Text, part.Target!.Name));
            part.IsBroken = true;
        }
        part.Values.Add(word);
        return true;
    }

    private bool ReportNeither(ChainPart part, WordSyntax word)
    {
        var signs = ScopeNames.All(context.Symbols, context.Scope)
            .Where(t => t is FindingTarget { Finding.Type: Model.Vocabularies.SignType }).Select(t => t.Name);
        context.Report(NameMessages.NeitherValueNorSign(
            context.At(word.Span), word.Text, part.Target!.Name, [.. part.Target.Values, .. signs]));
        part.IsBroken = true;
        return true;
    }

    private bool Guess()
    {
        HasGuessed = true;
        return true;
    }
}
