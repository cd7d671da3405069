using FindingRules.Model.Truths;
using Xunit;

namespace FindingRules.Tests.Model.Truths;

public sealed class KleeneTests
{
    private static readonly Truth[] _all = Enum.GetValues<Truth>();

    [Theory]
    [InlineData(Truth.True, Truth.Unknown, Truth.Unknown, Truth.True)]
    [InlineData(Truth.False, Truth.Unknown, Truth.False, Truth.Unknown)]
    [InlineData(Truth.Unknown, Truth.Unknown, Truth.Unknown, Truth.Unknown)]
    [InlineData(Truth.True, Truth.False, Truth.False, Truth.True)]
    public void And_or(Truth left, Truth right, Truth and, Truth or)
    {
        Assert.Equal(and, Kleene.And(left, right));
        Assert.Equal(and, Kleene.And(right, left));
        Assert.Equal(or, Kleene.Or(left, right));
        Assert.Equal(or, Kleene.Or(right, left));
    }

    [Fact]
    public void Unknown_is_its_own_opposite()
    {
        Assert.Equal([Truth.True, Truth.Unknown, Truth.False], _all.Select(Kleene.Not));
        Assert.All(_all, t => Assert.Equal(t, Kleene.Not(Kleene.Not(t))));
    }

    [Fact]
    public void The_excluded_middle_is_not_excluded() => Assert.Equal(Truth.Unknown, Kleene.Or(Truth.Unknown, Kleene.Not(Truth.Unknown)));

    [Fact]
    public void Every_operation_is_what_all_ways_to_settle_the_unknown_have_in_common()
    {
        foreach (var a in _all)
            foreach (var b in _all)
            {
                Assert.Equal(Common(a, b, (x, y) => x && y), Kleene.And(a, b));
                Assert.Equal(Common(a, b, (x, y) => x || y), Kleene.Or(a, b));
            }
    }

    [Fact]
    public void At_least_is_what_all_ways_to_settle_the_unknown_have_in_common()
    {
        for (var needed = 0; needed <= 4; needed++)
            for (var isTrue = 0; isTrue <= 3; isTrue++)
                for (var isUnknown = 0; isUnknown <= 3; isUnknown++)
                {
                    var settled = Enumerable.Range(isTrue, isUnknown + 1).Select(count => count >= needed).Distinct().ToList();
                    var expected = settled.Count == 2 ? Truth.Unknown : Kleene.Of(settled[0]);
                    Assert.Equal(expected, Kleene.AtLeast(needed, isTrue, isUnknown));
                }
    }

    private static Truth Common(Truth a, Truth b, Func<bool, bool, bool> operation)
    {
        var results = (from x in Ways(a) from y in Ways(b) select operation(x, y)).Distinct().ToList();
        return results.Count == 2 ? Truth.Unknown : Kleene.Of(results[0]);
    }

    private static bool[] Ways(Truth truth) => truth == Truth.Unknown ? [false, true] : [truth == Truth.True];
}
