using System.Collections.Immutable;
using System.Globalization;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>The statements that no lone word behind <c>or</c> can join.</summary>
internal sealed class StatementBinder(BindingContext context)
{
    private readonly PhraseResolver _resolver = new(context);

    public Condition? Bind(BodySyntax body) => body switch
    {
        BareSyntax { Operand: BracketSyntax bracket } => new ConditionBinder(context).Bind(bracket.Inside),
        BareSyntax bare => Report(SyntaxMessages.QuantityAlone(context.At(bare.Span), context.Written(bare.Span))),
        IsSyntax says => NotWords(says.Operand, "a finding or a structure"),
        NoSyntax no => BindNo(no),
        AssessedSyntax assessed => BindAssessed(assessed),
        NotAssessableSyntax notAssessable => BindNotAssessable(notAssessable),
        ExtentSyntax extent => BindExtent(extent),
        ComparisonSyntax comparison => new QuantityBinder(context).Bind(comparison),
        BetweenSyntax between => new QuantityBinder(context).Bind(between),
        QuantifiedSyntax quantified => BindQuantified(quantified),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A choice or a topic with its values.</summary>
    public static Condition Says(PhraseReading reading, ImmutableSortedSet<string> values, Location location)
    {
        values = values.WithComparer(StringComparer.Ordinal);
        return reading.Target switch
        {
            TopicTarget topic => new TopicStatement(reading.Place, topic.Topic, values, location),
            FindingTarget finding => new ValueStatement(reading.Place, finding.Finding, values, location),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private Negation? BindNo(NoSyntax no)
    {
        var reading = _resolver.Resolve(no.Phrase, new NoForm()).Reading;
        if (reading?.Target is not FindingTarget sign) return null;
        return new Negation(new SignStatement(reading.Place, sign.Finding, context.At(no.Phrase.Span)), context.At(no.Span));
    }

    private Condition? BindAssessed(AssessedSyntax assessed)
    {
        if (assessed.Operand is null) return BindAssessedAlone(assessed);
        if (assessed.Operand is not PhraseSyntax phrase) return NotWords(assessed.Operand, "a finding or a structure");
        var reading = _resolver.Resolve(phrase, new AssessedForm()).Reading;
        if (reading is null) return null;
        var location = context.At(assessed.Span);
        var statement = new AssessedStatement(reading.Place, (reading.Target as FindingTarget)?.Finding, location);
        return assessed.Not is null ? statement : new Negation(statement, location);
    }

    private Condition? BindNotAssessable(NotAssessableSyntax says)
    {
        if (says.Operand is not PhraseSyntax phrase) return NotWords(says.Operand, "a finding");
        var reading = _resolver.Resolve(phrase, new NotAssessableForm()).Reading;
        return reading?.Target is FindingTarget { Finding: var finding }
            ? new NotAssessableStatement(reading.Place, finding, context.At(says.Span))
            : null;
    }

    private Condition? BindAssessedAlone(AssessedSyntax assessed) =>
        context.Scope.IsStudy
            ? Report(TypeNameMessages.NotAssessed(context.At(assessed.Span), "study", "not a structure"))
            : new AssessedStatement(Place.Own, null, context.At(assessed.Span));

    private Condition? BindExtent(ExtentSyntax extent)
    {
        if (extent.Operand is not PhraseSyntax phrase) return NotWords(extent.Operand, "an extent");
        var relation = extent.Relation.ToString().ToLowerInvariant();
        var reading = _resolver.Resolve(phrase, new ExtentForm(relation)).Reading;
        if (reading?.Target is not FindingTarget { Finding: { Type: ExtentType type } finding }) return null;
        var from = IndexOf(finding, type.Axis, extent.From);
        var to = extent.To is null ? from : IndexOf(finding, type.Axis, extent.To);
        if (extent.Axis is { } axis && axis.Text != type.Axis.Name)
            return Report(TypeNameMessages.WrongAxis(context.At(axis.Span), finding.Name, type.Axis.Name, axis.Text));
        if (from < 0 || to < 0) return null;
        if (from <= to) return new ExtentStatement(reading.Place, finding, extent.Relation, from, to, context.At(extent.Span));
        var points = context.At(extent.From.Span.Through(extent.To!.Span));
        return Report(TypeNameMessages.PointsOutOfOrder(points, extent.From.Text, extent.To.Text, type.Axis.Points));
    }

    private int IndexOf(Finding finding, Axis axis, WordSyntax point)
    {
        var index = axis.IndexOf(point.Text);
        if (index < 0)
            context.Report(TypeNameMessages.UnknownPoint(context.At(point.Span), finding.Name, point.Text, axis.Points));
        return index;
    }

    private Quantified? BindQuantified(QuantifiedSyntax quantified)
    {
        if (context.Counts == Quantified.MostNested)
        {
            context.Report(PlaceNameMessages.CountsTooDeep(context.At(quantified.Span), Quantified.MostNested));
            return null;
        }
        var range = new ScopeBinder(context.Symbols, context.Text, context.Messages).BindNamed(quantified.Range);
        if (range is null) return null;
        var count = CountOf(quantified, range);
        var where = new ConditionBinder(context with { Scope = range, Counts = context.Counts + 1 }).Bind(quantified.Where.Inside);
        return where is null || count is null
            ? null
            : new Quantified(quantified.Quantifier, count.Value, range, where, context.At(quantified.Span));
    }

    private int? CountOf(QuantifiedSyntax quantified, Scope range)
    {
        if (quantified.Count is not { } word) return 1;
        // A rule for the study counts both sides of what is paired.
        var most = range.Structures.Sum(s => context.Scope.IsStudy && s.IsPaired ? 2 : 1);
        if (int.TryParse(word.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count >= 1 && count <= most)
            return count;
        context.Report(PlaceNameMessages.CountOutOfRange(
            context.At(word.Span), word.Text, string.Join(' ', quantified.Range.Select(w => w.Text)), most));
        return null;
    }

    private Condition? NotWords(OperandSyntax operand, string wanted) =>
        Report(SyntaxMessages.WordsForCalculation(context.At(operand.Span), context.Written(operand.Span), wanted));

    private Condition? Report(Model.Messages.Message message)
    {
        context.Report(message);
        return null;
    }
}
