using System.Collections.Immutable;
using FindingRules.Benchmarks.Deciding;
using FindingRules.Benchmarks.Measuring;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;
using FindingRules.Workload;

namespace FindingRules.Benchmarks.Growth;

/// <summary>One quantity grows while the others stay as they are: 500 rules, twelve structures, a fifth of the findings not sent.</summary>
internal static class Sweeps
{
    private const int Rules = 500;
    private const int Studies = 32;
    private const int StructuresElsewhere = 400;
    private const string Decided = "decided: what fires, what is unknown";
    private const string Read = "read: the same, with every topic, in words";

    public static IEnumerable<Chart> All()
    {
        // The first measured would otherwise be measured before all is compiled for speed.
        for (var i = 0; i < 5; i++) MeasureRead(0, Sample(new WorkloadPack(Drawn(Rules))));
        yield return OverRules();
        yield return OverStructures();
        yield return OverStudySize();
        yield return OverUnknown();
        yield return OverLesions();
    }

    private static Chart OverRules()
    {
        int[] counts = [500, 1_500, 5_000, 15_000, 50_000];
        var drawn = Drawn(counts[^1]);
        var dense = counts.Select(n => MeasureTopics(n, Sample(new WorkloadPack([.. drawn.Take(n)])))).ToList();
        var elsewhere = counts.Select(n => MeasureTopics(n, Sample(new WorkloadPack(
            [.. drawn.Take(n).Select((r, i) => i < Rules ? r : r with { Structure = WorkloadSize.Structures + (i % StructuresElsewhere) })],
            StructuresElsewhere)))).ToList();
        return new Chart("rules", "More rules", "rules in the pack", IsLogarithmic: true,
        [
            new Curve("rules of the study's structures, decided", [.. dense.Select(m => m.Decided)]),
            new Curve("rules of the study's structures, every topic too", [.. dense.Select(m => m.More)]),
            new Curve("rules beyond 500 of other structures, decided", [.. elsewhere.Select(m => m.Decided)]),
        ]);
    }

    private static Chart OverStructures() => TwoCurves(
        "structures", "More structures in the pack, forty rules each", "structures in the vocabulary", isLogarithmic: true,
        from count in new[] { 12, 25, 50, 100, 200, 400, 800 }
        select MeasureRead(count, Sample(new WorkloadPack(
            [.. Drawn(40 * count).Select((rule, i) => rule with { Structure = i % count })], count - WorkloadSize.Structures))));

    private static Chart OverStudySize()
    {
        var sample = Sample(new WorkloadPack(Drawn(Rules)));
        return TwoCurves(
            "study-size", "Larger studies, four findings sent of each structure", "structures in the study", isLogarithmic: false,
            from count in new[] { 1, 2, 3, 4, 6, 8, 10, 12 }
            select MeasureRead(count, sample with { Studies = [.. sample.Studies.Select(s => s with { Subjects = [.. s.Subjects.Take(count)] })] }));
    }

    private static Chart OverUnknown() => TwoCurves(
        "unknown", "More findings not sent", "findings not sent, per cent", isLogarithmic: false,
        from percent in new[] { 0, 10, 20, 30, 40, 50, 60, 70, 80, 90 }
        select MeasureRead(percent, Sample(new WorkloadPack(Drawn(Rules)), 1 - (percent / 100.0))));

    private static Chart OverLesions()
    {
        var sample = Sample(new WorkloadPack(Drawn(Rules)));
        return TwoCurves(
            "lesions", "Lesions in three of twelve structures", "lesions in each of the three", isLogarithmic: false,
            from count in new[] { 0, 1, 2, 4, 8, 12, 16 }
            select MeasureRead(count, sample with { Studies = [.. sample.Studies.Select((s, i) => WithLesions(s, sample.Studies, i, count))] }));
    }

    // A lesion has what the same structure has in another study.
    private static Study WithLesions(Study study, ImmutableArray<Study> others, int number, int count) => study with
    {
        Subjects =
        [
            .. study.Subjects.Select((subject, at) => at >= 3 ? subject : subject with
            {
                Lesions = [.. Enumerable.Range(1, count).Select(i =>
                    new Lesion($"L{i}", others[(number + i) % others.Length].Subjects[at].Findings, subject.Location))],
            }),
        ],
    };

    private static Chart TwoCurves(string name, string title, string across, bool isLogarithmic, IEnumerable<Measured> points)
    {
        var all = points.ToList();
        return new Chart(name, title, across, isLogarithmic,
            [new Curve(Decided, [.. all.Select(p => p.Decided)]), new Curve(Read, [.. all.Select(p => p.More)])]);
    }

    private static Measured MeasureRead(double at, Sample sample) => Measure(at, sample, () => Write(sample));

    private static Measured MeasureTopics(int rules, Sample sample) => Measure(rules, sample, () => Decide(sample, WriteDown));

    /// <param name="more">What is measured beside deciding.</param>
    private static Measured Measure(double at, Sample sample, Action more)
    {
        var each = Fastest.Of([() => Decide(sample, static _ => { }), more], TimeSpan.FromMilliseconds(200));
        return new Measured(new Point(at, Micros(0)), new Point(at, Micros(1)));
        double Micros(int i) => each[i] / sample.Studies.Length / 1000;
    }

    private static void Decide(Sample sample, Action<Examination> ask)
    {
        foreach (var study in sample.Studies)
        {
            var examination = sample.Network.Examinations.Take();
            Evaluator.Settle(examination, study);
            ask(examination);
            sample.Network.Examinations.Return(examination);
        }
    }

    private static void WriteDown(Examination examination)
    {
        for (var i = 0; i < examination.Count; i++) examination[i].WriteDown();
    }

    private static void Write(Sample sample)
    {
        foreach (var study in sample.Studies) Evaluator.Evaluate(sample.Network, study);
    }

    private static ImmutableArray<RuleSketch> Drawn(int count) => new RuleDrawing(RuleDrawing.Seed).Make(count);

    private static Sample Sample(WorkloadPack pack, double shareSent = FactsDrawing.ShareSent) => new(
        NetworkCompiler.Compile(pack.Pack), [.. new FactsDrawing(seed: 2, shareSent).Make(Studies).Select(f => pack.StudyOf(f))]);
}

internal sealed record Sample(RuleNetwork Network, ImmutableArray<Study> Studies);

internal sealed record Measured(Point Decided, Point More);
