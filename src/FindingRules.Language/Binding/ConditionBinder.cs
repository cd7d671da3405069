using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Language.Binding;

/// <summary>
/// Gives a chain its meaning: resolves each term, joins lone words behind <c>or</c> to the values of the statement
/// before, and only then asks whether <c>and</c> and <c>or</c> mix.
/// </summary>
internal sealed class ConditionBinder(BindingContext context)
{
    public Condition? Bind(ChainSyntax chain)
    {
        RuntimeHelpers.EnsureSufficientExecutionStack();
        var parts = new List<ChainPart>();
        var joiner = new ValueJoiner(context);
        for (var i = 0; i < chain.Terms.Length; i++)
        {
            var before = i == 0 ? null : chain.Connectors[i - 1];
            if (before is { IsAnd: false } && joiner.TryJoin(parts[^1], chain.Terms[i])) continue;
            parts.Add(BindTerm(chain.Terms[i], before));
        }
        var conditions = parts.Select(Build).ToList();
        if (IsMixed(parts) && !joiner.HasGuessed) ReportMixed(parts, chain.Span);
        else if (conditions.All(c => c is not null)) return Combine(parts, [.. conditions.Select(c => c!)], chain.Span);
        return null;
    }

    private ChainPart BindTerm(TermSyntax term, ConnectorSyntax? before)
    {
        var inner = context with { Statement = term.Body.Span };
        switch (term.Body)
        {
            case BareSyntax { Operand: PhraseSyntax phrase }:
                return Says(inner, term, before, phrase, [], null);
            case IsSyntax { Operand: PhraseSyntax phrase } statement:
                return Says(inner, term, before, phrase, statement.Values, statement.Not);
            default:
                var condition = new StatementBinder(inner).Bind(term.Body);
                return new ChainPart(term, before) { Condition = condition, IsBroken = condition is null };
        }
    }

    private static ChainPart Says(
        BindingContext inner, TermSyntax term, ConnectorSyntax? before, PhraseSyntax phrase, ImmutableArray<WordSyntax> given,
        WordSyntax? not)
    {
        var resolution = new PhraseResolver(inner).Resolve(phrase, new SaysForm(given));
        var reading = resolution.Reading;
        if (reading is { Target: FindingTarget sign, Values: [] })
        {
            var location = inner.At(phrase.Span);
            return new ChainPart(term, before) { Condition = new SignStatement(reading.Place, sign.Finding, location) };
        }
        var path = given.IsEmpty && reading is not null
            ? TextSpan.Between(phrase.Span.Start, reading.Values[0].Span.Start)
            : phrase.Span;
        return new ChainPart(term, before)
        {
            Reading = reading,
            Target = resolution.Target,
            InnerNot = not,
            Path = path,
            Values = reading is null ? [] : [.. reading.Values],
            IsBroken = reading is null,
        };
    }

    private Condition? Build(ChainPart part)
    {
        if (part.IsBroken) return null;
        var location = context.At(part.Span);
        if (part.Condition is { } condition) return part.Term.Not is null ? condition : new Negation(condition, location);
        var isNegated = part.Term.Not is not null || part.InnerNot is not null;
        if (isNegated && part.Values.Count > 1)
        {
            ReportNegatedList(part, location);
            return null;
        }
        var inner = TextSpan.Between(part.Term.Body.Span.Start, part.Span.End);
        var statement = StatementBinder.Says(part.Reading!, [.. part.Values.Select(v => v.Text)], context.At(inner));
        if (part.InnerNot is not null) statement = new Negation(statement, context.At(inner));
        return part.Term.Not is null ? statement : new Negation(statement, location);
    }

    private void ReportNegatedList(ChainPart part, Location location)
    {
        var path = context.Written(part.Path);
        var values = part.Values.Select(v => v.Text).ToList();
        var others = string.Concat(values.Skip(1).Select(v => $" or {path} {v}"));
        context.Report(SyntaxMessages.NegatedList(
            location, $"not ({path} {string.Join(" or ", values)})", $"(not {path} {values[0]}){others}"));
    }

    private static bool IsMixed(List<ChainPart> parts) =>
        parts.Skip(1).Select(p => p.Before!.IsAnd).Distinct().Count() > 1;

    private void ReportMixed(List<ChainPart> parts, TextSpan whole)
    {
        var odd = parts.Skip(2).First(p => p.Before!.IsAnd != parts[1].Before!.IsAnd).Before!;
        context.Report(SyntaxMessages.MixedAndOr(
            context.At(odd.Span), context.At(whole), Bracketed(parts, andFirst: true), Bracketed(parts, andFirst: false)));
    }

    /// <summary>The chain in words, with brackets around what the one connector joins.</summary>
    private string Bracketed(List<ChainPart> parts, bool andFirst)
    {
        var runs = new List<List<string>>();
        foreach (var part in parts)
        {
            if (part.Before is null || part.Before.IsAnd != andFirst) runs.Add([]);
            runs[^1].Add(context.Written(part.Span));
        }
        var (inner, outer) = andFirst ? (" and ", " or ") : (" or ", " and ");
        return string.Join(outer, runs.Select(r => r.Count == 1 ? r[0] : $"({string.Join(inner, r)})"));
    }

    private Condition Combine(List<ChainPart> parts, ImmutableArray<Condition> conditions, TextSpan span)
    {
        if (conditions is [var only]) return only;
        return parts[1].Before!.IsAnd ? new AllOf(conditions, context.At(span)) : new AnyOf(conditions, context.At(span));
    }
}
