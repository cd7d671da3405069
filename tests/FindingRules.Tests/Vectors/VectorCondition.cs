using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing.Generators;
using FindingRules.Tests.Engine.Properties;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Tests.Vectors;

/// <summary>
/// Says a term in our language and lets both interpreters decide it: truths become signs of a study, numbers measures
/// and constants in turn, texts choices, lists of truths structures to count; null is what was not sent.
/// </summary>
internal sealed class VectorCondition
{
    private readonly List<SentFinding> _sent = [];
    private readonly List<Finding> _missing = [];
    private readonly List<(Structure Structure, Findings Findings)> _counted = [];
    private readonly List<Kind> _kinds = [];
    private int _numbers;

    /// <summary>Null where our language cannot say it.</summary>
    public static Truth? Decide(VectorTerm term)
    {
        var saying = new VectorCondition();
        return saying.Of(term) is { } condition ? saying.Run(condition) : null;
    }

    private Truth Run(Condition condition)
    {
        var vocabulary = Vocabulary(
            [], _kinds, _counted.Select(c => c.Structure),
            _sent.Select(s => s.Finding).Concat(_missing));
        var caution = new Caution("note", Says("note"), [], Nowhere);
        var rule = new Rule("R", Scope.Study, condition, [new CautionConclusion(caution, Nowhere)], Nowhere)
        {
            Text = "R",
            Because = "A published case.",
            Revision = "000000000000",
        };
        var study = new Study
        {
            Key = "S-1",
            Location = Nowhere,
            Facts = new Findings(ByName(_sent, s => s.Finding.Name)),
            Subjects = [.. _counted.Select(c => new StudySubject(c.Structure, Side.None, false, false, c.Findings, [], Nowhere))],
        };
        return Assert(BothInterpreters.Decide(ModelOf.Pack(new Symbols { Vocabulary = vocabulary }, [rule]), study));

        static Truth Assert(FindingRules.Engine.Evaluating.Outcome outcome) => outcome.Rules.Single(r => r.Subject == Subject.Study).Truth;
    }

    private Condition? Of(VectorTerm term) => term switch
    {
        TruthTerm or NullTerm => Sign(term),
        CallTerm { Name: "not", Parts: [var part] } => Not(Of(part)),
        CallTerm { Name: "and", Parts: [var a, var b] } => All(Of(a), Of(b)),
        CallTerm { Name: "or", Parts: [var a, var b] } => AnyOne(Of(a), Of(b)),
        CallTerm { Name: "implies", Parts: [var a, var b] } => AnyOne(Not(Of(a)), Of(b)),
        CallTerm { Name: "xor", Parts: [var a, var b] } => Not(Same(Of(a), Of(b))),
        CallTerm { Name: "between", Parts: [var value, var low, var high] } => Between(Number(value), Number(low), Number(high)),
        CallTerm { Name: "in", Parts: [var value, var test] } => In(value, test),
        CallTerm { Name: "contains", Parts: [var range, var value] } => In(value, range),
        CallTerm { Name: "IsNull", Parts: [var part] } => Not(Assessed(part)),
        CallTerm { Name: "IsTrue", Parts: [TruthTerm or NullTerm] } call => Settled(call.Parts[0], s => s),
        CallTerm { Name: "IsFalse", Parts: [TruthTerm or NullTerm] } call => Settled(call.Parts[0], s => new Negation(s, Nowhere)),
        CallTerm { Name: "all" or "AllTrue" } call => Count(Quantifier.Every, call.Parts),
        CallTerm { Name: "any" or "AnyTrue" } call => Count(Quantifier.Any, call.Parts),
        CompareTerm { Left: { } left } compare => Compare(left, compare.Comparator, compare.Right),
        _ => null,
    };

    private SignStatement? Sign(VectorTerm term)
    {
        var finding = ModelOf.Sign($"sign-{_sent.Count + _missing.Count}");
        if (term is TruthTerm truth) _sent.Add(new SentFinding(finding, new SignValue(truth.Value), Nowhere));
        else if (term is NullTerm) _missing.Add(finding);
        else return null;
        return new SignStatement(Place.Study, finding, Nowhere);
    }

    private AllOf Settled(VectorTerm term, Func<SignStatement, Condition> condition)
    {
        var sign = Sign(term)!;
        return new AllOf([new AssessedStatement(Place.Study, sign.Finding, Nowhere), condition(sign)], Nowhere);
    }

    private AssessedStatement? Assessed(VectorTerm term)
    {
        var finding = term switch
        {
            NullTerm or TruthTerm => Sign(term)!.Finding,
            NumberTerm number => Measure(number.Unit, number.Value),
            TextTerm { Value.Length: > 0 } text => Choice(text.Value, [text.Value]),
            _ => null,
        };
        return finding is null ? null : new AssessedStatement(Place.Study, finding, Nowhere);
    }

    private Quantified? Count(Quantifier quantifier, ImmutableArray<VectorTerm> parts)
    {
        var items = parts is [ListTerm list] ? list.Items : parts;
        if (parts.IsEmpty || !items.All(i => i is TruthTerm || (i is NullTerm && parts is not [NullTerm]))) return null;
        var sign = ModelOf.Sign("holds");
        var kind = Kind("item", null, sign);
        _kinds.Add(kind);
        foreach (var (item, index) in items.Select((item, index) => (item, index)))
            _counted.Add((Structure($"item-{index}", kind, isPaired: false), item is TruthTerm truth
                ? new Findings(ByName([new SentFinding(sign, new SignValue(truth.Value), Nowhere)], s => s.Finding.Name))
                : Findings.None));
        var range = new Scope("each item", kind, [.. _counted.Select(c => c.Structure)]);
        return new Quantified(quantifier, 0, range, new SignStatement(Place.Own, sign, Nowhere), Nowhere);
    }

    private Condition? In(VectorTerm value, VectorTerm test) => test switch
    {
        ListTerm list when value is TextTerm text && list.Items.All(i => i is TextTerm) =>
            Membership(text.Value, [.. list.Items.Select(i => ((TextTerm)i).Value)]),
        ListTerm { Items.IsEmpty: false } list => AnyOne([.. list.Items.Select(i => In(value, i))]),
        RangeTerm range => All(
            Compare(value, range.LowClosed ? Comparator.AtLeast : Comparator.Above, range.Low),
            Compare(value, range.HighClosed ? Comparator.AtMost : Comparator.Below, range.High)),
        CompareTerm { Left: null } compare => Compare(value, compare.Comparator, compare.Right),
        ListTerm => null,
        _ => Compare(value, Comparator.Equal, test),
    };

    private Condition? Compare(VectorTerm left, Comparator? comparator, VectorTerm right)
    {
        if (comparator is null) return Not(Compare(left, Comparator.Equal, right));
        if (left is TextTerm text && right is TextTerm other && comparator == Comparator.Equal) return Membership(text.Value, [other.Value]);
        if (comparator == Comparator.Equal && left is TruthTerm or NullTerm && right is TruthTerm or NullTerm) return Same(Sign(left), Sign(right));
        return Number(left) is { } a && Number(right) is { } b && (a.Dimension == b.Dimension || left is NullTerm || right is NullTerm)
            ? new ComparisonStatement(a, comparator.Value, b, Nowhere)
            : null;
    }

    private ValueStatement Membership(string value, ImmutableArray<string> values) => new(
        Place.Study, Choice(value, values), values.ToImmutableSortedSet(StringComparer.Ordinal), Nowhere);

    private Finding Choice(string value, ImmutableArray<string> values)
    {
        var finding = ModelOf.Choice($"choice-{_sent.Count + _missing.Count}", null, [value, .. values]);
        _sent.Add(new SentFinding(finding, new ChoiceValue(value), Nowhere));
        return finding;
    }

    private QuantityExpression? Number(VectorTerm term) => term switch
    {
        NumberTerm number when _numbers++ % 2 == 0 => Measured(number.Unit, number.Value),
        NumberTerm number => new ConstantExpression(new Quantity(number.Value, number.Unit), Nowhere),
        NullTerm => Measured(Unit.Plain, null),
        ArithmeticTerm { Left: var left, Right: var right } arithmetic when Number(left) is { } a && Number(right) is { } b =>
            new ArithmeticExpression(arithmetic.Operator, a, b, DimensionOf(arithmetic.Operator, a, b), Nowhere),
        _ => null,
    };

    private MeasureExpression Measured(Unit unit, Rational? value) => new(Place.Study, Measure(unit, value), unit.Dimension, Nowhere);

    private Finding Measure(Unit unit, Rational? value)
    {
        var finding = ModelOf.Measure($"measure-{_sent.Count + _missing.Count}", unit, Interval.Unlimited);
        if (value is not { } number) _missing.Add(finding);
        else _sent.Add(new SentFinding(finding, new MeasuredValue(Interval.Point(new Quantity(number, unit).InBase), unit, false, "shown"), Nowhere));
        return finding;
    }

    private static Dimension DimensionOf(ArithmeticOperator by, QuantityExpression left, QuantityExpression right) => by switch
    {
        ArithmeticOperator.Multiply => left.Dimension * right.Dimension,
        ArithmeticOperator.Divide => left.Dimension / right.Dimension,
        _ => left.Dimension,
    };

    private static BetweenStatement? Between(QuantityExpression? value, QuantityExpression? low, QuantityExpression? high) =>
        value is null || low is null || high is null ? null : new BetweenStatement(value, low, high, Nowhere);

    private static Negation? Not(Condition? part) => part is null ? null : new Negation(part, Nowhere);

    private static AllOf? All(params ImmutableArray<Condition?> parts) => parts.Any(p => p is null) ? null : new AllOf([.. parts.Select(p => p!)], Nowhere);

    private static AnyOf? AnyOne(params ImmutableArray<Condition?> parts) => parts.Any(p => p is null) ? null : new AnyOf([.. parts.Select(p => p!)], Nowhere);

    private static AnyOf? Same(Condition? a, Condition? b) => AnyOne(All(a, b), All(Not(a), Not(b)));
}
