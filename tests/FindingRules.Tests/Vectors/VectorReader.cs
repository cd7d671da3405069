using System.Collections.Immutable;
using System.Text.RegularExpressions;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;

namespace FindingRules.Tests.Vectors;

/// <summary>Reads the common part of CQL and FEEL. What it cannot read, our language cannot say either: null.</summary>
internal sealed partial class VectorReader
{
    private static readonly string[] _infix = ["before", "after", "includes", "overlaps", "intersect", "contains"];
    private readonly ImmutableArray<string> _words;
    private readonly ImmutableDictionary<string, ImmutableArray<string?>> _inputs;
    private int _at;

    private VectorReader(ImmutableArray<string> words, ImmutableDictionary<string, ImmutableArray<string?>> inputs) =>
        (_words, _inputs) = (words, inputs);

    public static VectorTerm? Read(string text, ImmutableDictionary<string, ImmutableArray<string?>> inputs)
    {
        var words = Word().Matches(text);
        if (words.Sum(w => w.Length) != text.Count(c => !char.IsWhiteSpace(c)) + words.Sum(w => w.Value.Count(char.IsWhiteSpace))) return null;
        var reader = new VectorReader([.. words.Select(w => w.Value)], inputs);
        var term = reader.Implies();
        return reader._at == reader._words.Length ? term : null;
    }

    [GeneratedRegex("""\d+(\.\d+)?L?|'[^']*'|"[^"]*"|[A-Za-z]\w*|\.\.|[<>!]=|[-+*/()\[\]{}<>=,]""")]
    private static partial Regex Word();

    private string Next => _at < _words.Length ? _words[_at] : "";

    private bool Take(string word)
    {
        if (Next != word) return false;
        _at++;
        return true;
    }

    private VectorTerm? Implies() => Or() is { } left ? Take("implies") ? Call("implies", left, Or()) : left : null;

    private VectorTerm? Or()
    {
        var left = And();
        while (left is not null && Next is "or" or "xor") left = Call(_words[_at++], left, And());
        return left;
    }

    private VectorTerm? And()
    {
        var left = Relation();
        while (left is not null && Take("and")) left = Call("and", left, Relation());
        return left;
    }

    private VectorTerm? Relation()
    {
        if (Take("not")) return Call("not", Relation());
        var left = Sum();
        if (left is null) return null;
        if (Comparison() is var (comparator, isThere) && isThere) return Compared(left, comparator);
        if (Take("between"))
        {
            var low = Sum();
            return Take("and") ? Call("between", left, low, Sum()) : null;
        }
        if (Take("in")) return Call("in", left, Test());
        if (Take("included")) return Take("in") ? Call("included in", left, Sum()) : null;
        return _infix.Contains(Next) ? Call(_words[_at++], left, Sum()) : left;
    }

    /// <summary>What stands after <c>in</c>: a list, a range, a comparison, a value, or several of them in brackets.</summary>
    private VectorTerm? Test()
    {
        var start = _at;
        if (Take("(") && Separated(Test, ")") is { } tests && (tests.Items.Length > 1 || tests.Items[0] is CompareTerm)) return tests;
        _at = start;
        return Comparison() is var (comparator, isThere) && isThere ? Compared(null, comparator) : Sum();
    }

    private CompareTerm? Compared(VectorTerm? left, Comparator? comparator) =>
        Sum() is { } right ? new CompareTerm(left, comparator, right) : null;

    private (Comparator?, bool) Comparison()
    {
        (Comparator?, bool) found = Next switch
        {
            ">" => (Comparator.Above, true),
            ">=" => (Comparator.AtLeast, true),
            "<" => (Comparator.Below, true),
            "<=" => (Comparator.AtMost, true),
            "=" => (Comparator.Equal, true),
            "!=" => (null, true),
            _ => (null, false),
        };
        if (found.Item2) _at++;
        return found;
    }

    private VectorTerm? Sum()
    {
        var left = Product();
        while (left is not null && Next is "+" or "-")
            left = Arithmetic(_words[_at++] == "+" ? ArithmeticOperator.Add : ArithmeticOperator.Subtract, left, Product());
        return left;
    }

    private VectorTerm? Product()
    {
        var left = Single();
        while (left is not null && Next is "*" or "/")
            left = Arithmetic(_words[_at++] == "*" ? ArithmeticOperator.Multiply : ArithmeticOperator.Divide, left, Single());
        return left;
    }

    private VectorTerm? Single()
    {
        var word = Next;
        if (word.Length == 0) return null;
        if (char.IsAsciiDigit(word[0])) return Number();
        _at++;
        return word switch
        {
            "-" => Negative(Single()),
            "true" or "false" => new TruthTerm(word == "true"),
            "null" => Null(),
            "Interval" => Next is "[" or "(" ? Range(_words[_at++] == "[", ",") : null,
            "{" => Separated(Sum, "}"),
            "[" => ListOrRange(),
            "]" => Range(isClosed: false, ".."),
            "(" => Bracketed(),
            ['"' or '\'', .. var text, _] => new TextTerm(text),
            _ when Take("(") => Separated(Sum, ")") is { } arguments ? new CallTerm(word, arguments.Items) : null,
            _ => Input(word),
        };
    }

    private NumberTerm? Number()
    {
        var isRead = Rational.TryRead(_words[_at++].TrimEnd('L'), out var value);
        var unit = Next.StartsWith('\'') ? Unit.Find(_words[_at++].Trim('\'')) : Unit.Plain;
        return isRead && unit is not null ? new NumberTerm(value, unit) : null;
    }

    private static VectorTerm? Negative(VectorTerm? part) => part switch
    {
        null => null,
        NumberTerm number => number with { Value = -number.Value },
        _ => new ArithmeticTerm(ArithmeticOperator.Subtract, new NumberTerm(0, Unit.Plain), part),
    };

    private NullTerm Null()
    {
        // A type such as "as Integer" or "as Interval<Integer>" says nothing about a value that is missing.
        if (Take("as")) _at++;
        return new NullTerm();
    }

    private VectorTerm? Input(string name) =>
        _inputs.TryGetValue(name, out var value) && value.Length == 1 ? Read(value[0] ?? "null", _inputs.Clear()) : null;

    private VectorTerm? Bracketed()
    {
        var start = _at;
        if (Range(isClosed: false, "..") is { } range) return range;
        _at = start;
        var inner = Implies();
        return Take(")") ? inner : null;
    }

    private VectorTerm? ListOrRange()
    {
        var start = _at;
        if (Range(isClosed: true, "..") is { } range) return range;
        _at = start;
        return Separated(Sum, "]");
    }

    private RangeTerm? Range(bool isClosed, string separator)
    {
        if (Sum() is not { } low || !Take(separator) || Sum() is not { } high) return null;
        if (Take("]")) return new RangeTerm(low, isClosed, high, true);
        return Take(")") || Take("[") ? new RangeTerm(low, isClosed, high, false) : null;
    }

    private ListTerm? Separated(Func<VectorTerm?> item, string end)
    {
        var items = ImmutableArray.CreateBuilder<VectorTerm>();
        while (!Take(end))
        {
            if ((items.Count > 0 && !Take(",")) || item() is not { } one) return null;
            items.Add(one);
        }
        return new ListTerm(items.ToImmutable());
    }

    private static CallTerm? Call(string name, params ImmutableArray<VectorTerm?> parts) =>
        parts.Any(p => p is null) ? null : new CallTerm(name, [.. parts.Select(p => p!)]);

    private static ArithmeticTerm? Arithmetic(ArithmeticOperator by, VectorTerm left, VectorTerm? right) =>
        right is null ? null : new ArithmeticTerm(by, left, right);
}
