using System.Runtime.CompilerServices;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>Calculations and comparisons.</summary>
internal sealed class QuantityBinder(BindingContext context)
{
    private readonly PhraseResolver _resolver = new(context);
    private readonly UnitCheck _units = new(context);

    public ComparisonStatement? Bind(ComparisonSyntax comparison)
    {
        var left = Bind(comparison.Left);
        var right = Bind(comparison.Right);
        if (left is null || right is null) return null;
        return _units.Agree(new(comparison.Left, left), new(comparison.Right, right))
            ? new ComparisonStatement(left, comparison.Comparator, right, context.At(comparison.Span))
            : null;
    }

    public BetweenStatement? Bind(BetweenSyntax between)
    {
        var value = Bind(between.Value);
        var low = Bind(between.Low);
        var high = Bind(between.High);
        if (value is null || low is null || high is null) return null;
        var agrees = _units.Agree(new(between.Value, value), new(between.Low, low))
            & _units.Agree(new(between.Value, value), new(between.High, high));
        if (!agrees) return null;
        if (low is not ConstantExpression { Quantity: var from }
            || high is not ConstantExpression { Quantity: var to }
            || from.InBase <= to.InBase)
            return new BetweenStatement(value, low, high, context.At(between.Span));
        var ends = between.Low.Span.Through(between.High.Span);
        context.Report(UnitNameMessages.EmptyRange(context.At(ends), context.Written(ends)));
        return null;
    }

    public QuantityExpression? Bind(OperandSyntax operand)
    {
        RuntimeHelpers.EnsureSufficientExecutionStack();
        return operand switch
        {
            PhraseSyntax phrase => Bind(phrase),
            NumberSyntax number => Bind(number),
            ArithmeticSyntax arithmetic => Bind(arithmetic),
            BracketSyntax bracket => Bind(bracket),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private QuantityExpression? Bind(PhraseSyntax phrase)
    {
        var reading = _resolver.Resolve(phrase, new MeasureForm()).Reading;
        return reading?.Target switch
        {
            FindingTarget { Finding: { Type: MeasureType type } finding } =>
                new MeasureExpression(reading.Place, finding, type.Unit.Dimension, context.At(phrase.Span)),
            DerivedTarget derived => new DerivedExpression(reading.Place, derived.Measure, context.At(phrase.Span)),
            _ => null,
        };
    }

    private ConstantExpression Bind(NumberSyntax number) => new(QuantityOf(number), context.At(number.Span));

    // INVARIANT: digits were counted before the grammar ran, so the number can be read.
    internal static Quantity QuantityOf(NumberSyntax number)
    {
        _ = Rational.TryRead(number.Number, out var value);
        return new Quantity(value, number.Unit is null ? Unit.Plain : Unit.Find(number.Unit.Text) ?? Unit.Plain);
    }

    private QuantityExpression? Bind(BracketSyntax bracket)
    {
        if (bracket.Inside.Terms is [{ Not: null, Body: BareSyntax inside }]) return Bind(inside.Operand);
        context.Report(SyntaxMessages.ConditionForQuantity(context.At(bracket.Span), context.Written(bracket.Span)));
        return null;
    }

    private ArithmeticExpression? Bind(ArithmeticSyntax arithmetic)
    {
        if (IsDivisorUnclear(arithmetic) || IsUnknownUnit(arithmetic)) return null;
        var left = Bind(arithmetic.Left);
        var right = Bind(arithmetic.Right);
        if (left is null || right is null) return null;
        if (arithmetic.Operator is ArithmeticOperator.Add or ArithmeticOperator.Subtract
            && !_units.Agree(new(arithmetic.Left, left), new(arithmetic.Right, right)))
            return null;
        if (arithmetic.Operator is ArithmeticOperator.Divide && right is ConstantExpression { Quantity.Number.IsZero: true })
        {
            context.Report(UnitNameMessages.DividesByZero(context.At(arithmetic.Span), context.Written(arithmetic.Span)));
            return null;
        }
        var dimension = arithmetic.Operator switch
        {
            ArithmeticOperator.Multiply => left.Dimension * right.Dimension,
            ArithmeticOperator.Divide => left.Dimension / right.Dimension,
            _ => left.Dimension,
        };
        return new ArithmeticExpression(arithmetic.Operator, left, right, dimension, context.At(arithmetic.Span));
    }

    private bool IsDivisorUnclear(ArithmeticSyntax arithmetic)
    {
        if (arithmetic is not { Operator: ArithmeticOperator.Divide, Right: ArithmeticSyntax { IsUnwritten: true } product })
            return false;
        var (dividend, number, times) =
            (context.Written(arithmetic.Left.Span), context.Written(product.Left.Span), context.Written(product.Right.Span));
        context.Report(SyntaxMessages.DivisorUnclear(
            context.At(arithmetic.Span), context.Written(arithmetic.Span),
            $"{dividend} / ({number} {times})", $"{dividend} / {number} * {times}"));
        return true;
    }

    /// <summary><c>4 mn</c>: behind a number an unknown word was more likely meant as a unit.</summary>
    private bool IsUnknownUnit(ArithmeticSyntax arithmetic)
    {
        if (arithmetic is not { IsUnwritten: true, Right: PhraseSyntax { Prefixes: [], Words: [var word] } phrase }
            || _resolver.IsKnown(phrase))
            return false;
        var units = Unit.All.Where(u => u != Unit.Plain).Select(u => u.Name).ToList();
        var measures = ScopeNames.All(context.Symbols, context.Scope)
            .Where(t => t is DerivedTarget or FindingTarget { Finding.Type: MeasureType }).Select(t => t.Name);
        context.Report(UnitNameMessages.UnknownUnit(context.At(word.Span), word.Text, units, [.. measures]));
        return true;
    }
}
