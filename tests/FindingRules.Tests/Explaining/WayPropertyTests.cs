using System.Collections.Concurrent;
using System.Collections.Immutable;
using CsCheck;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Explaining;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Engine.Reference;
using FindingRules.Model.Explanations;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing.Generators;
using Xunit;

namespace FindingRules.Tests.Explaining;

/// <summary>
/// What is said about changes holds, judged by the reference interpreter: each way has its result, no part of a way has
/// it, and where a search was complete no way is missing.
/// </summary>
public sealed class WayPropertyTests
{
    private const int RulesAsked = 3;
    private static readonly SearchLimits Limits = new(Trials: 400, Changes: 3, Ways: 4);

    [Theory]
    [InlineData(400)]
    // So few that the search ends early and goes on with the findings that matter most.
    [InlineData(24)]
    public void A_way_makes_the_rule_stand_and_no_part_of_it_does(int trials) => Sample.Any.Sample(
        sample =>
        {
            foreach (var (rule, subject, whyNot) in Asked(sample, Limits with { Trials = trials }))
                Holds(whyNot.Ways, sample, study => Stands(sample.Pack, study, rule, subject));
        },
        iter: 50, print: s => s.ToString());

    [Fact]
    public void A_way_takes_back_a_step_a_caution_or_a_hold_and_no_part_of_it_does()
    {
        var sorts = new ConcurrentDictionary<string, int>();
        Sample.Any.Sample(
            sample =>
            {
                var explanation = new Explainer(NetworkCompiler.Compile(sample.Pack), sample.Study, Limits).WhatIf();
                foreach (var whatIf in explanation.WhatIf.Where(w => w.Line.Sort != "suggestion").Take(2 * RulesAsked))
                {
                    Holds(whatIf.Ways, sample, study => !IsSaid(whatIf.Line, sample.Pack, study));
                    if (!whatIf.Ways.IsEmpty) sorts.AddOrUpdate(whatIf.Line.Sort, 1, (_, n) => n + 1);
                }
            },
            iter: 40, print: s => s.ToString());
        Assert.All(["next-step", "caution", "held"], sort => Assert.Contains(sort, sorts.Keys));
    }

    [Fact]
    public void A_way_takes_the_impression_back_and_no_part_of_it_does() => Sample.Any.Sample(
        sample =>
        {
            var explanation = new Explainer(NetworkCompiler.Compile(sample.Pack), sample.Study, Limits).WhatIf();
            foreach (var whatIf in explanation.WhatIf.Where(w => w.Line.Sort == "suggestion").Take(RulesAsked))
            {
                var subject = Assert.Single(whatIf.Line.Subjects);
                var value = explanation.Find(new AnswerKey(whatIf.Line.Name, subject))!.Value;
                Holds(whatIf.Ways, sample, study => !Published(sample.Pack, study, whatIf.Line.Name, subject, value!));
            }
        },
        iter: 30, print: s => s.ToString());

    [Fact]
    public void Where_a_search_was_complete_no_way_is_missing() =>
        new Drawn<(Sample Sample, ImmutableArray<(Subject At, Finding Finding, FindingValue Value)> Changes)>(draw =>
        {
            var sample = Sample.Make(draw, mayAskAssessed: true);
            return (sample, [.. Enumerable.Range(0, draw.Between(1, 2)).Select(_ => AChange(draw, sample))]);
        }).Sample(
            drawn =>
            {
                var (sample, changes) = drawn;
                var changed = changes.Aggregate(sample.Study, (s, c) => Applied.To(s, c.At, false, c.Finding, c.Value));
                foreach (var (rule, subject, whyNot) in Asked(sample, Limits with { Trials = 1500, Changes = 2, Ways = int.MaxValue }))
                {
                    if (!whyNot.Search.IsComplete || whyNot.Search.UpTo < changes.Length) continue;
                    if (!Stands(sample.Pack, changed, rule, subject)) continue;
                    Assert.True(
                        whyNot.Ways.Any(w => w.Changes.All(c => changes.Any(x => x.At.Key == c.Subject && x.Finding.Name == c.Finding))),
                        $"{rule} at {subject} stands with {string.Join(", ", changes)}");
                }
            },
            iter: 60, print: d => $"{d.Sample}{string.Join('\n', d.Changes)}");

    [Fact]
    public void Samples_have_ways_of_several_sizes()
    {
        var sizes = new List<int>();
        Sample.Any.Sample(
            sample => { lock (sizes) sizes.AddRange(Asked(sample, Limits).SelectMany(a => a.WhyNot.Ways).Select(w => w.Changes.Length)); },
            iter: 30, threads: 1);
        Assert.All([1, 2, 3], size => Assert.Contains(size, sizes));
    }

    private static IEnumerable<(Rule Rule, Subject Subject, WhyNot WhyNot)> Asked(Sample sample, SearchLimits limits)
    {
        var explainer = new Explainer(NetworkCompiler.Compile(sample.Pack), sample.Study, limits);
        var outcome = ReferenceInterpreter.Decide(sample.Pack, sample.Study);
        foreach (var at in outcome.Rules.Where(r => !Stands(outcome, r.Rule, r.Subject)).Take(RulesAsked))
            yield return (at.Rule, at.Subject, Assert.Single(explainer.WhyNot(at.Rule, at.Subject).WhyNot));
    }

    private static void Holds(ImmutableArray<Way> ways, Sample sample, Func<Study, bool> result)
    {
        foreach (var way in ways)
            foreach (var part in Subsets(way.Changes))
            {
                var study = Applied.To(sample.Study, sample.Pack.Vocabulary, part);
                var isWhole = part.Length == way.Changes.Length;
                Assert.True(result(study) == isWhole, $"{(isWhole ? "the way" : "a part of the way")} {string.Join(", ", part)}");
            }
    }

    private static IEnumerable<ImmutableArray<Change>> Subsets(ImmutableArray<Change> changes) =>
        Enumerable.Range(0, 1 << changes.Length).Select(mask => changes.Where((_, i) => (mask & (1 << i)) != 0).ToImmutableArray());

    private static bool Stands(Pack pack, Study study, Rule rule, Subject subject) =>
        Stands(ReferenceInterpreter.Decide(pack, study), rule, subject);

    private static bool Stands(Outcome outcome, Rule rule, Subject subject) =>
        outcome.Rules.Any(r => r.Rule == rule && r.Subject == subject && r.Standing == Standing.Stands)
        && rule.Topics.All(t => outcome.Topics.Any(o => o.Topic == t.Topic && o.Subject == subject && o.Value == t.Value.Name));

    /// <summary>As the reference interpreter sees it, of the rules and subjects that the line came from.</summary>
    private static bool IsSaid(ExplainedLine line, Pack pack, Study study)
    {
        var outcome = ReferenceInterpreter.Decide(pack, study);
        if (line.Sort is "held" or "conflict")
            return outcome.Topics.Any(t => t.Topic.Name == line.Name && t.Subject.Key == line.Subjects[0]
                && t.Status is TopicStatus.Held or TopicStatus.Conflict);
        var rules = outcome.Rules.Where(r => line.By.Contains(new ProofKey(r.Rule.Id, r.Subject.Key)));
        return line.Sort == "caution" ? rules.Any(r => r.Truth == Truth.True) : rules.Any(r => Stands(outcome, r.Rule, r.Subject));
    }

    private static bool Published(Pack pack, Study study, string topic, string subject, string value) =>
        ReferenceInterpreter.Decide(pack, study).Topics.Any(t => t.Topic.Name == topic && t.Subject.Key == subject && t.Value == value);

    private static (Subject At, Finding Finding, FindingValue Value) AChange(Draw draw, Sample sample)
    {
        var subjects = sample.Study.Subjects.SelectMany(s => s.Lesions.Select(l => new Subject(s.Structure, s.Side, l.Id))
            .DefaultIfEmpty(new Subject(s.Structure, s.Side, null))).Prepend(Subject.Study).ToList();
        var at = draw.Of(subjects);
        var finding = draw.Of((at.Structure?.Kind.Findings ?? sample.Pack.Vocabulary.StudyFacts).Values.ToList());
        return (at, finding, StudyDrawing.Value(draw, finding.Type) switch
        {
            MeasuredValue { Interval: { IsPoint: false, Low: { } low } } bound => bound with { Interval = Interval.Point(low), IsBound = false },
            var value => value,
        });
    }
}
