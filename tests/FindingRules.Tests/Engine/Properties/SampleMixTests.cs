using CsCheck;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reference;
using FindingRules.Model.Truths;
using FindingRules.Testing.Generators;
using Xunit;
using Xunit.Abstractions;

namespace FindingRules.Tests.Engine.Properties;

/// <summary>The agreement of two interpreters says little of samples in which nothing is decided.</summary>
public sealed class SampleMixTests(ITestOutputHelper output)
{
    [Fact]
    public void Rules_and_topics_of_random_samples_come_out_every_way()
    {
        var source = new PCG(1, 20261125);
        var outcomes = Enumerable.Range(0, 400)
            .Select(_ => Sample.Any.Generate(source, null, out var _))
            .Select(s => ReferenceInterpreter.Decide(s.Pack, s.Study)).ToList();
        var truths = Shares(outcomes.SelectMany(o => o.Rules).Select(r => r.Truth));
        var standings = Shares(outcomes.SelectMany(o => o.Rules).Select(r => r.Standing));
        var statuses = Shares(outcomes.SelectMany(o => o.Topics).Select(t => t.Status));

        Assert.All(Enum.GetValues<Truth>(), t => Assert.True(truths[t] > 0.1, $"{t}: {truths[t]:P1}"));
        Assert.All(Enum.GetValues<Standing>(), s => Assert.True(standings[s] > 0.01, $"{s}: {standings[s]:P1}"));
        Assert.All(Enum.GetValues<TopicStatus>(), s => Assert.True(statuses[s] > 0.01, $"{s}: {statuses[s]:P1}"));
    }

    [Fact]
    public void A_sample_is_shown_with_every_rule_in_words() => Sample.Any.Sample(
        s => Assert.All(s.Pack.Rules, r => Assert.Contains($"{r.Id} {r.Scope.Written}", s.ToString(), StringComparison.Ordinal)), iter: 50);

    private Dictionary<T, double> Shares<T>(IEnumerable<T> items)
        where T : struct, Enum
    {
        var all = items.ToList();
        var shares = Enum.GetValues<T>().ToDictionary(v => v, v => all.Count(i => i.Equals(v)) / (double)all.Count);
        output.WriteLine($"{all.Count}: {string.Join(", ", shares.Select(s => $"{s.Key} {s.Value:P1}"))}");
        return shares;
    }
}
