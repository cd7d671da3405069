namespace FindingRules.Benchmarks.Ledger;

/// <summary>Records a second, and how long one waited for its answer.</summary>
internal sealed record Rate(int Records, TimeSpan Took, double MedianMilliseconds, double P99Milliseconds)
{
    public double PerSecond => Records / Took.TotalSeconds;

    public static Rate Of(TimeSpan took, IEnumerable<TimeSpan> waits)
    {
        var sorted = waits.Select(w => w.TotalMilliseconds).Order().ToArray();
        return new Rate(sorted.Length, took, At(sorted, 0.5), At(sorted, 0.99));
    }

    public static double At(double[] sorted, double share) => sorted[Math.Min(sorted.Length - 1, (int)(sorted.Length * share))];
}
