using System.Collections.Immutable;
using Xunit;

namespace FindingRules.Tests.Vectors;

/// <summary>
/// The published logic cases that our language can say, decided by both interpreters. Which ones those are is written
/// down here, so that none can drop out unseen.
/// </summary>
public sealed class LogicVectorTests
{
    private const int CasesUsed = 434;

    [VectorFact]
    public void Every_case_that_our_language_can_say_comes_out_as_published() =>
        Assert.All(Used(), v => Assert.Equal("", VectorVerdict.Of(v)));

    [VectorFact]
    public void The_cases_used_are_those_written_down()
    {
        var all = All().CountBy(v => v.Group).ToDictionary();
        var used = Used().CountBy(v => v.Group).Select(g => new LogicVectorUse(g.Key, g.Value, all[g.Key])).OrderBy(u => u.Group, StringComparer.Ordinal);
        var written = LogicVectorUse.Groups.Select(g => g with { Rest = "" }).OrderBy(u => u.Group, StringComparer.Ordinal);
        Assert.Equal(written, used);
        Assert.Equal(CasesUsed, Used().Count());
    }

    [VectorFact]
    public void What_is_left_out_has_a_reason()
    {
        Assert.All(LogicVectorUse.Groups, g => Assert.Equal(g.Used == g.Of, g.Rest.Length == 0));
        var unused = All().Select(v => v.Group).Distinct().Except(LogicVectorUse.Groups.Select(g => g.Group)).ToList();
        Assert.All(unused, group => Assert.Single(LogicVectorUse.LeftOut.Keys, prefix => group.StartsWith(prefix, StringComparison.Ordinal)));
        Assert.All(LogicVectorUse.LeftOut.Keys, prefix => Assert.Contains(unused, group => group.StartsWith(prefix, StringComparison.Ordinal)));
    }

    [VectorFact]
    public void Where_the_standards_decide_otherwise_we_really_differ()
    {
        var named = All().Where(v => LogicVectorUse.Otherwise.ContainsKey($"{v.Group}/{v.Name}")).ToList();
        Assert.Equal(LogicVectorUse.Otherwise.Count, named.Count);
        Assert.All(named, v => Assert.NotEqual("", VectorVerdict.Of(v) ?? ""));
    }

    private static ImmutableArray<LogicVector> All() => [.. LogicVector.ReadCql(), .. LogicVector.ReadFeel()];

    private static IEnumerable<LogicVector> Used() => All().Where(v =>
        !LogicVectorUse.Otherwise.ContainsKey($"{v.Group}/{v.Name}")
        && !LogicVectorUse.LeftOut.Keys.Any(prefix => v.Group.StartsWith(prefix, StringComparison.Ordinal))
        && VectorVerdict.Of(v) is not null);
}
