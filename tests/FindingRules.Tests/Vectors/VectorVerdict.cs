using System.Collections.Immutable;
using System.Text.RegularExpressions;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Truths;

namespace FindingRules.Tests.Vectors;

/// <summary>What our language makes of a published case: null where it cannot say it, else what differs, empty where nothing does.</summary>
internal static partial class VectorVerdict
{
    public static string? Of(LogicVector vector)
    {
        if (vector.Group is "1153-boxed-some" or "1154-boxed-every") return OfBoxed(vector);
        if (vector.Group == "0016-some-every") return OfPrices(vector);
        if (vector.Expressions.Length != vector.Expected.Length) return null;
        var verdicts = vector.Expressions.Zip(vector.Expected, (expression, expected) => Of(expression, expected, vector.Inputs)).ToList();
        return verdicts.Contains(null) ? null : string.Join("; ", verdicts.Where(v => v!.Length > 0));
    }

    private static string? Of(string expression, string? expected, ImmutableDictionary<string, ImmutableArray<string?>> inputs)
    {
        if (VectorReader.Read(expression.Replace("list:", "", StringComparison.Ordinal), inputs) is not { } term) return null;
        if (term is CallTerm { Name: "intersect" } intersection) return OfIntersection(intersection, expected);
        if (term is ArithmeticTerm or NumberTerm) return OfNumber(term, expected);
        if (expected is not (null or "true" or "false")) return null;
        var actual = VectorRange.Decide(term) ?? VectorCondition.Decide(term);
        return actual is null ? null : Difference(expression, Wanted(expected), actual.Value);
    }

    private static string? OfNumber(VectorTerm term, string? expected)
    {
        var wanted = expected is null ? new NumberTerm(0, Unit.Plain) : VectorReader.Read(expected, ImmutableDictionary<string, ImmutableArray<string?>>.Empty);
        if (wanted is not NumberTerm) return null;
        var isEqual = VectorCondition.Decide(new CompareTerm(term, Comparator.Equal, wanted));
        return isEqual is null ? null : Difference($"{term} = {expected}", expected is null ? Truth.Unknown : Truth.True, isEqual.Value);
    }

    private static string? OfIntersection(CallTerm call, string? expected)
    {
        if (VectorRange.Of(call.Parts[0]) is not { } a || VectorRange.Of(call.Parts[1]) is not { } b) return null;
        var both = a.Intersect(b);
        if (expected is null) return both.IsEmpty ? "" : $"{both} is not empty";
        var wanted = VectorReader.Read(expected, ImmutableDictionary<string, ImmutableArray<string?>>.Empty);
        return wanted is not null && VectorRange.Of(wanted) == both ? "" : $"{both} is not {expected}";
    }

    private static string? OfBoxed(LogicVector vector)
    {
        if (VectorReader.Read(vector.Expressions[0], vector.Inputs) is not ListTerm list || list.Items.Any(i => i is not NumberTerm)) return null;
        var truths = list.Items.Select(i => Decided(vector.Expressions[1].Replace("element", $"{((NumberTerm)i).Value}", StringComparison.Ordinal)));
        return OfCounted(vector, vector.Group.EndsWith("some", StringComparison.Ordinal) ? "any" : "all", [.. truths]);
    }

    private static string? OfPrices(LogicVector vector)
    {
        if (vector.Expressions is not [var text] || Prices().Match(text) is not { Success: true } match) return null;
        var prices = vector.Inputs["priceTable2"].Where(p => Rational.TryRead(p, out _));
        return OfCounted(vector, match.Groups[1].Value == "some" ? "any" : "all", [.. prices.Select(p => Decided($"{p} > 10"))]);
    }

    [GeneratedRegex("^(some|every) i in priceTable[12] satisfies i.price > 10$")]
    private static partial Regex Prices();

    private static string? OfCounted(LogicVector vector, string call, ImmutableArray<VectorTerm?> truths)
    {
        if (truths.Contains(null)) return null;
        return Difference(vector.Name, Wanted(vector.Expected[0]), VectorCondition.Decide(new CallTerm(call, [new ListTerm([.. truths.Select(t => t!)])]))!.Value);
    }

    private static TruthTerm? Decided(string text) =>
        VectorReader.Read(text, ImmutableDictionary<string, ImmutableArray<string?>>.Empty) is { } term && VectorCondition.Decide(term) is { } truth
            ? new TruthTerm(truth == Truth.True)
            : null;

    private static Truth Wanted(string? expected) => expected is null ? Truth.Unknown : Kleene.Of(expected == "true");

    private static string Difference(string what, Truth wanted, Truth actual) => wanted == actual ? "" : $"{what} is {actual} and not {wanted}";
}
