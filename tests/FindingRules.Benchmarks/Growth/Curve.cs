using System.Collections.Immutable;

namespace FindingRules.Benchmarks.Growth;

internal readonly record struct Point(double X, double Y);

/// <summary>One line of a chart.</summary>
internal sealed record Curve(string Name, ImmutableArray<Point> Points);

/// <summary>What is drawn and written down: curves over one quantity.</summary>
/// <param name="Name">Of the file.</param>
/// <param name="IsLogarithmic">The quantity grows by factors.</param>
internal sealed record Chart(string Name, string Title, string Across, bool IsLogarithmic, ImmutableArray<Curve> Curves)
{
    public const string Up = "time for one study, microseconds";
}
