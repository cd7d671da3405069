using CsCheck;
using FindingRules.Model.Conditions;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>Conditions put together at random mean the same when read again from their own words.</summary>
public sealed class ConditionWordsTests
{
    private static readonly Gen<string> Quantity = Gen.Recursive<string>((depth, inner) => depth > 3
        ? Gen.OneOf("thickness", "3 mm")
        : Gen.Frequency(
            (4, Gen.OneOf("thickness", "tear-length", "contralateral thickness", "earlier defect-depth", "4 mm", "0.3 cm", "-2.5 mm")),
            (1, Gen.Select(inner, inner, (a, b) => $"({a} + {b})")),
            (1, Gen.Select(inner, inner, (a, b) => $"{a} - ({b})")),
            (1, Gen.Select(inner, a => $"1.5 * ({a})")),
            (1, Gen.Select(inner, a => $"({a}) / 2")),
            (1, Gen.Select(inner, a => $"1.25 ({a})"))));

    private static readonly Gen<string> Statement = Gen.Frequency(
        (3, Gen.OneOf(
            "shadowing", "no shadowing", "trauma", "echo anechoic", "echo hypoechoic or anechoic", "echo is not fibrillar",
            "fluid reaches bursal", "fluid spans bursal to articular surface", "fluid within intrasubstance to articular",
            "not fluid within bursal", "assessed", "contralateral assessed", "thickness not assessed", "ipsilateral biceps assessed",
            "reangled not assessable", "not (thickness not assessable)",
            "tear-depth full-thickness or bursal-sided", "ipsilateral biceps subluxed", "contralateral subscapularis full-thickness",
            "depth-share above 50 %", "age at least 60 years", "suspected wood or glass", "earlier radiograph negative")),
        (1, Gen.Select(Quantity, Gen.OneOf("above", "at least", "<", "<=", "="), Quantity, (a, by, b) => $"{a} {by} {b}")),
        (1, Gen.Select(Quantity, Quantity, (a, b) => $"{a} between thickness and {b}")));

    private static readonly Gen<string> Condition = Gen.Recursive<string>((depth, inner) => depth > 3
        ? Statement
        : Gen.Frequency(
            (3, Statement),
            (1, Gen.Select(inner.Array[2, 3], parts => string.Join(" and ", parts.Select(p => $"({p})")))),
            (1, Gen.Select(inner.Array[2, 3], parts => string.Join(" or ", parts.Select(p => $"({p})")))),
            (1, Gen.Select(inner, part => $"not ({part})")),
            (1, Gen.Select(Gen.OneOf("any", "every", "no", "at least 2"), inner, (by, part) => $"{by} cuff-tendon where ({part})"))));

    private static readonly Gen<string> FewCounts = Condition.Where(c => Counts(c) <= Quantified.MostNested);

    /// <summary>How many counts stand inside each other.</summary>
    private static int Counts(string condition)
    {
        var (open, most) = (new Stack<bool>(), 0);
        for (var i = 0; i < condition.Length; i++)
        {
            if (condition[i] == '(') open.Push(condition.AsSpan(0, i).EndsWith("where "));
            if (condition[i] == ')') open.Pop();
            most = Math.Max(most, open.Count(isCount => isCount));
        }
        return most;
    }

    [Fact]
    public void Words_read_again_have_the_same_canonical_text() => FewCounts.Where(c => c.Length < 1_500).Sample(
        text =>
        {
            var reading = Reading.Condition("each cuff-tendon", text);
            Assert.Equal("", reading.Said);
            var again = Reading.Condition("each cuff-tendon", reading.Words!);
            Assert.Equal("", again.Said);
            Assert.Equal(reading.Canonical, again.Canonical);
            Assert.Equal(reading.Words, again.Words);
        },
        iter: 1_000);

    [Fact]
    public void Order_gaps_and_brackets_do_not_change_the_canonical_text() => Gen.Select(FewCounts, FewCounts).Sample(
        (one, other) =>
        {
            var plain = Reading.Condition("each cuff-tendon", $"({one}) and ({other})").Canonical;
            Assert.Equal(plain, Reading.Condition("each cuff-tendon", $"( ({other})  and\n(( {one} )) )").Canonical);
            Assert.NotEqual(plain, Reading.Condition("each cuff-tendon", $"not (({one}) and ({other}))").Canonical);
        },
        iter: 300);

    [Theory]
    [InlineData("thickness above 3 cm", "thickness > 30.0 mm")]
    [InlineData("age above 2 years", "age above 24 months")]
    [InlineData("echo anechoic or hypoechoic", "echo is hypoechoic or anechoic")]
    [InlineData("shadowing and (trauma and assessed)", "assessed and trauma and shadowing")]
    [InlineData("cuff-tendon assessed", "assessed")]
    public void One_meaning_has_one_canonical_text(string one, string other)
    {
        var (left, right) = (Reading.Condition("each cuff-tendon", one), Reading.Condition("each cuff-tendon", other));

        Assert.Equal("", left.Said + right.Said);
        Assert.Equal(left.Canonical, right.Canonical);
    }

    [Theory]
    [InlineData("thickness above 3 cm", "thickness at least 3 cm")]
    [InlineData("thickness above 3 cm", "thickness above 3 mm")]
    [InlineData("thickness above 3 cm", "contralateral thickness above 3 cm")]
    [InlineData("earlier echo anechoic", "echo anechoic")]
    [InlineData("thickness - (2 mm - 1 mm) above 1 mm", "thickness - 2 mm - 1 mm above 1 mm")]
    [InlineData("ipsilateral biceps subluxed", "contralateral biceps subluxed")]
    [InlineData("any cuff-tendon where (assessed)", "every cuff-tendon where (assessed)")]
    [InlineData("(shadowing and trauma) or assessed", "shadowing and (trauma or assessed)")]
    [InlineData("fluid reaches bursal", "fluid within bursal")]
    [InlineData("reangled not assessed", "reangled not assessable")]
    public void Another_meaning_has_another_canonical_text(string one, string other)
    {
        var (left, right) = (Reading.Condition("each cuff-tendon", one), Reading.Condition("each cuff-tendon", other));

        Assert.Equal("", left.Said + right.Said);
        Assert.NotEqual(left.Canonical, right.Canonical);
    }
}
