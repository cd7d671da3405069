using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Conditions;
using FindingRules.Model.Explanations;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining;

/// <summary>A comparison with each operand as the network worked it out.</summary>
internal sealed class Calculations(Examination examination, StatementNode node, int[] chosen)
{
    private readonly AmountReader _amounts = new(examination, node, chosen);

    public Calculation? Of(Statement statement) => statement switch
    {
        ComparisonStatement { Left: ConstantExpression } s => Make(s.Right, Turned(s.Comparator), [s.Left]),
        ComparisonStatement s => Make(s.Left, Word(s.Comparator), [s.Right]),
        BetweenStatement s => Make(s.Value, "between", [s.Low, s.High]),
        _ => null,
    };

    private Calculation Make(QuantityExpression value, string relation, ImmutableArray<QuantityExpression> ends)
    {
        var isWithinPrecision = node.Test(examination, chosen, isWidened: false) != node.Test(examination, chosen, isWidened: true);
        var (threshold, distance) = Nearest(value, ends);
        return new Calculation(
            WorkOut(value, Place.Own), relation, [.. ends.Select(e => WorkOut(e, Place.Own))], threshold, distance,
            Precision(value, ends), isWithinPrecision);
    }

    private (string? Threshold, string? Distance) Nearest(QuantityExpression value, ImmutableArray<QuantityExpression> ends)
    {
        var unit = _amounts.UnitOf(value, Place.Own) ?? _amounts.UnitOf(ends[0], Place.Own);
        var limits = ends.Select(e => (End: e, At: Point(e))).Where(e => e.At is not null).ToList();
        if (unit is null || limits.Count == 0) return (null, null);
        var measured = Point(value);
        var nearest = measured is { } m ? limits.MinBy(e => Rational.Abs(m - e.At!.Value)) : limits[0];
        var threshold = nearest.End is ConstantExpression constant
            ? constant.Quantity.ToString()
            : Quantity.FromBase(nearest.At!.Value, unit).ToString();
        if (measured is not { } point) return (threshold, null);
        return (threshold, Quantity.FromBase(Rational.Abs(point - nearest.At!.Value), unit).ToString());
    }

    private Rational? Point(QuantityExpression expression) =>
        _amounts.Value(expression, Place.Own) is { IsPoint: true, Low: { } value } ? value : null;

    /// <summary>Of one measurement against a number, its own; of anything else the answer is in how it comes out.</summary>
    private static string? Precision(QuantityExpression value, ImmutableArray<QuantityExpression> ends) =>
        value is MeasureExpression { Finding.Type: MeasureType { Precision: { IsZero: false } precision, Unit: var unit } }
            && ends.All(e => e is ConstantExpression)
            ? Quantity.FromBase(precision, unit).ToString()
            : null;

    private WorkedOut WorkOut(QuantityExpression expression, Place from)
    {
        var unit = _amounts.UnitOf(expression, from);
        var value = _amounts.Value(expression, from);
        var (shown, exact) = (value, unit) is ({ } known, { } inUnit)
            ? (Shown.Interval(known, inUnit), Shown.Exact(known, inUnit))
            : (null, null);
        var words = ConditionText.Words(expression);
        return expression switch
        {
            ConstantExpression => new WorkedOut("number", words, null, shown, exact, []),
            MeasureExpression measure => new WorkedOut(
                "measure", words, Titled(words, measure.Finding.Name, measure.Finding.Title), shown, exact, []),
            DerivedExpression derived => new WorkedOut(
                "derived", words, Titled(words, derived.Measure.Name, derived.Measure.Title), shown, exact,
                [WorkOut(derived.Measure.Is, PlaceComposition.From(from, derived.Place))]),
            ArithmeticExpression sum => new WorkedOut(
                Sign(sum.Operator), words, null, shown, exact, [WorkOut(sum.Left, from), WorkOut(sum.Right, from)]),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    /// <summary>The words that say whose stay as they are.</summary>
    private static string Titled(string words, string name, string title) =>
        words.EndsWith(name, StringComparison.Ordinal) ? words[..^name.Length] + title : words;

    private static string Sign(ArithmeticOperator arithmetic) => arithmetic switch
    {
        ArithmeticOperator.Add => "+",
        ArithmeticOperator.Subtract => "-",
        ArithmeticOperator.Multiply => "*",
        _ => "/",
    };

    private static string Word(Comparator comparator) => comparator switch
    {
        Comparator.Above => "above",
        Comparator.AtLeast => "at least",
        Comparator.Below => "below",
        Comparator.AtMost => "at most",
        _ => "equal to",
    };

    /// <summary>The measured side is told first, whichever side the author wrote it on.</summary>
    private static string Turned(Comparator comparator) => Word(comparator switch
    {
        Comparator.Above => Comparator.Below,
        Comparator.AtLeast => Comparator.AtMost,
        Comparator.Below => Comparator.Above,
        Comparator.AtMost => Comparator.AtLeast,
        _ => comparator,
    });
}
