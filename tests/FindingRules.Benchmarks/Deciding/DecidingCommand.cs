using System.Globalization;
using System.Reflection;
using BenchmarkDotNet.Attributes;
using FindingRules.Benchmarks.Measuring;

namespace FindingRules.Benchmarks.Deciding;

/// <summary>
/// <see cref="DecidingBenchmarks"/> in short: all sides in turn in one process, as a table. What is slow to set up is
/// measured only where it is named.
/// </summary>
internal static class DecidingCommand
{
    private const int Studies = 128;
    private static readonly string[] _slow = [nameof(DecidingBenchmarks.Lambdas), nameof(DecidingBenchmarks.Rete)];

    public static int Run(string[] args)
    {
        var counts = args.Where(a => char.IsAsciiDigit(a[0])).Select(int.Parse).DefaultIfEmpty(500);
        string[] named = [.. args.Where(a => !char.IsAsciiDigit(a[0]))];
        Console.WriteLine("| rules | side | ns a study | of if by if | bytes a study |");
        Console.WriteLine("|---|---|---|---|---|");
        foreach (var rules in counts) Compare(rules, named);
        return 0;
    }

    private static void Compare(int rules, string[] named)
    {
        var benchmarks = new DecidingBenchmarks { Rules = rules, Studies = Studies };
        benchmarks.Setup();
        if (named.Contains(nameof(benchmarks.Lambdas))) benchmarks.SetupLambdas();
        if (named.Contains(nameof(benchmarks.Rete))) benchmarks.SetupRete();
        var sides = (
            from method in typeof(DecidingBenchmarks).GetMethods()
            let benchmark = method.GetCustomAttribute<BenchmarkAttribute>()
            where benchmark is not null
            where benchmark.Baseline || named.Contains(method.Name) || (named.Length == 0 && !_slow.Contains(method.Name))
            let studies = _slow.Contains(method.Name) ? benchmark.OperationsPerInvoke : Studies
            select (benchmark.Description, studies, Call: method.CreateDelegate<Func<int>>(benchmarks))).ToList();
        Action[] calls = [.. sides.Select(side => new Action(() => side.Call()))];
        var (times, first) = (Fastest.Of(calls, TimeSpan.FromSeconds(2)), 0.0);
        for (var i = 0; i < sides.Count; i++)
        {
            var each = times[i] / sides[i].studies;
            if (i == 0) first = each;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {rules:N0} | {sides[i].Description} | {each:N0} | {each / first:0.00} | {Fastest.BytesOf(calls[i]) / sides[i].studies} |"));
        }
    }
}
