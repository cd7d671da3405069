using System.Diagnostics;

namespace FindingRules.Benchmarks.Measuring;

/// <summary>
/// The shortest of many short measurements. Other work on the machine can make one longer and none shorter, so that this
/// is what changes least between two runs.
/// </summary>
internal static class Fastest
{
    private static readonly TimeSpan _least = TimeSpan.FromMilliseconds(100);

    /// <summary>Nanoseconds of one call.</summary>
    public static double Of(Action call) => Of([call], 3 * _least)[0];

    /// <summary>Nanoseconds of one call of each, all measured in turn, so that none has a quieter time than another.</summary>
    public static double[] Of(IReadOnlyList<Action> calls, TimeSpan leastOfEach)
    {
        foreach (var call in calls) WarmUp(call);
        var best = Enumerable.Repeat(double.MaxValue, calls.Count).ToArray();
        var began = Stopwatch.GetTimestamp();
        for (var round = 0; round < 3 || Stopwatch.GetElapsedTime(began) < calls.Count * leastOfEach; round++)
            for (var i = 0; i < calls.Count; i++) best[i] = Math.Min(best[i], Once(calls[i]));
        return best;
    }

    /// <summary>Bytes that one call allocates on this thread, on average.</summary>
    public static long BytesOf(Action call)
    {
        call();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 10; i++) call();
        return (GC.GetAllocatedBytesForCurrentThread() - before) / 10;
    }

    // Until what runs often has been compiled anew with what was learnt of it.
    private static void WarmUp(Action call)
    {
        var began = Stopwatch.GetTimestamp();
        for (var i = 0; i < 3 || Stopwatch.GetElapsedTime(began) < _least; i++) call();
    }

    private static double Once(Action call)
    {
        var began = Stopwatch.GetTimestamp();
        call();
        return Stopwatch.GetElapsedTime(began).TotalNanoseconds;
    }
}
