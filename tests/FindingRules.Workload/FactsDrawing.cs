using System.Collections.Immutable;

namespace FindingRules.Workload;

/// <summary>Studies of every structure, a fifth of the findings not sent.</summary>
public sealed class FactsDrawing(int seed, double shareSent = FactsDrawing.ShareSent)
{
    public const double ShareSent = 0.8;

    private readonly Random _random = new(seed);

    public ImmutableArray<StudyFacts> Make(int count) => [.. Enumerable.Range(0, count).Select(_ => Study())];

    private StudyFacts Study()
    {
        var study = new StudyFacts();
        for (var i = 0; i < WorkloadSize.Structures; i++)
            study[i] = new SiteFacts
            {
                Thickness = Measure(),
                Length = Measure(),
                Echo = Value(WorkloadSize.Echoes),
                State = Value(WorkloadSize.States),
                Shadowing = Value(2),
            };
        return study;
    }

    private double Measure() => _random.NextDouble() < shareSent ? _random.Next(1, WorkloadSize.MostTenths) / 10.0 : double.NaN;

    private int Value(int count) => _random.NextDouble() < shareSent ? _random.Next(count) : -1;
}
