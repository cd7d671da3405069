using CsCheck;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reference;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Testing.Generators;
using Xunit;

namespace FindingRules.Tests.Engine.Properties;

/// <summary>
/// Supplying what was missing may settle what was unknown and never turns over what was settled. What is settled: a
/// truth of true or false, a rule that stands, a topic that is published, in conflict or without an answer. A rule that
/// yields may turn out false, and a held topic may turn out to be in conflict as well; nothing else may change of them.
/// </summary>
public sealed class MonotonicityTests
{
    private static readonly Gen<(Sample Sample, Study Known)> _supplied = new Drawn<(Sample, Study)>(draw =>
    {
        var sample = Sample.Make(draw, mayAskAssessed: false);
        return (sample, Supplying.OneFinding(draw, sample));
    });

    private static readonly Gen<(Sample Sample, Study Known)> _narrowed = new Drawn<(Sample, Study)>(draw =>
    {
        var sample = Sample.Make(draw, mayAskAssessed: false);
        return (sample, Supplying.NarrowerBounds(draw, sample.Study));
    });

    [Fact]
    public void A_finding_supplied_never_turns_over_what_was_settled() => Check(_supplied);

    [Fact]
    public void A_bound_made_narrower_never_turns_over_what_was_settled() => Check(_narrowed);

    [Fact]
    public void Many_supplied_findings_settle_something()
    {
        var source = new PCG(1, 7);
        var samples = Enumerable.Range(0, 100).Select(_ => _supplied.Generate(source, null, out var _)).ToList();
        var settling = samples.Count(s => BothInterpreters.Differences(
            ReferenceInterpreter.Decide(s.Sample.Pack, s.Sample.Study), ReferenceInterpreter.Decide(s.Sample.Pack, s.Known)).Count > 0);
        Assert.True(settling > samples.Count / 5, $"{settling} of {samples.Count}");
    }

    private static void Check(Gen<(Sample Sample, Study Known)> gen) => gen.Sample(
        s =>
        {
            AssertKept(ReferenceInterpreter.Decide, s.Sample, s.Known);
            AssertKept((pack, study) => Evaluator.Decide(NetworkCompiler.Compile(pack), study), s.Sample, s.Known);
        },
        iter: 250, print: s => $"{s.Sample}\nsupplied\n{SampleText.Of(s.Known)}");

    private static void AssertKept(Func<Pack, Study, Outcome> decide, Sample sample, Study known)
    {
        var before = decide(sample.Pack, sample.Study);
        var after = decide(sample.Pack, known);
        var rules = after.Rules.ToDictionary(r => (r.Rule, r.Subject));
        var topics = after.Topics.ToDictionary(t => (t.Topic, t.Subject));
        Assert.All(before.Rules, r => AssertKept(r, rules[(r.Rule, r.Subject)]));
        Assert.All(before.Topics, t => AssertKept(t, topics[(t.Topic, t.Subject)]));
    }

    private static void AssertKept(RuleOutcome before, RuleOutcome after)
    {
        if (before.Truth != Truth.Unknown) Assert.Equal(before.Truth, after.Truth);
        if (before.Widened != Truth.Unknown) Assert.Equal(before.Widened, after.Widened);
        if (before.Standing is Standing.False or Standing.Stands) Assert.Equal(before.Standing, after.Standing);
        if (before.Standing is Standing.Yields) Assert.True(after.Standing is Standing.Yields or Standing.False);
    }

    private static void AssertKept(TopicOutcome before, TopicOutcome after)
    {
        if (before.Status is TopicStatus.Held) Assert.True(after.Status is TopicStatus.Held or TopicStatus.Conflict);
        else if (before.Status is not TopicStatus.Open) Assert.Equal(before, after);
    }
}
