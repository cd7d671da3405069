using CsCheck;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Truths;
using FindingRules.Testing.Generators;
using FindingRules.Tests.Engine.Properties;
using Xunit;
using Xunit.Abstractions;

namespace FindingRules.Tests.Engine.Planes;

/// <summary>Rules that the planes decide come out as the reference interpreter has them.</summary>
public sealed class PlaneAgreementTests(ITestOutputHelper output)
{
    private static readonly Gen<Sample> _any = new Drawn<Sample>(OwnFindingDrawing.Make);

    [Fact]
    public void Planes_and_reference_agree() =>
        _any.Sample(s => { BothInterpreters.Decide(s.Pack, s.Study); }, iter: 600, print: s => s.ToString());

    [Fact]
    public void The_samples_are_decided_by_planes_and_every_way()
    {
        var source = new PCG(1, 20261125);
        var samples = Enumerable.Range(0, 200).Select(_ => _any.Generate(source, null, out var _)).ToList();
        var examinations = samples.Select(s => Evaluator.Examine(NetworkCompiler.Compile(s.Pack), s.Study)).ToList();
        var instances = examinations.SelectMany(e => Enumerable.Range(0, e.Count).Select(i => e[i])).Where(i => i.IsPresent).ToList();
        var rules = instances.Where(i => i.LesionCount == 0).SelectMany(i => i.Rules).Where(r => r.IsDecided).ToList();
        var live = rules.Count(r => r.Truth != Truth.False || r.Widened != Truth.False);
        var asked = instances.Where(i => i.LesionCount == 0)
            .Sum(i => Enumerable.Range(0, i.Candidates.Count).Count(c => i.Candidates[c].MustAsk)) / (double)live;
        output.WriteLine(
            $"{rules.Count} rules, {examinations.Sum(e => e.Work.Planes)} planes, {asked:P1} of {live} that are not false asked, "
            + $"{rules.Count(r => r.Widened != r.Truth)} within precision");
        Assert.All(Enum.GetValues<Truth>(), t => Assert.True(rules.Count(r => r.Truth == t) > rules.Count / 10, $"{t}"));
        Assert.True(rules.Count(r => r.Widened != r.Truth) > rules.Count / 100);
        Assert.True(examinations.Sum(e => e.Work.Planes) > samples.Count * 10);
        Assert.InRange(asked, 0.001, 0.25);
    }
}
