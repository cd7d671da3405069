using System.Reflection;
using BenchmarkDotNet.Attributes;
using FindingRules.Benchmarks;
using Xunit;

namespace FindingRules.Tests.Speed;

/// <summary>Every benchmark runs once, with its smallest parameters: none may rot between two measurements.</summary>
public sealed class BenchmarkTests
{
    public static TheoryData<string> Classes =>
        [.. typeof(ReadingBenchmarks).Assembly.GetTypes().Where(t => Benchmarks(t).Any()).Select(t => t.FullName!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Classes))]
    public void Every_benchmark_of_a_class_runs(string name)
    {
        var type = typeof(ReadingBenchmarks).Assembly.GetType(name)!;
        var benchmark = Activator.CreateInstance(type)!;
        foreach (var property in type.GetProperties())
            if (property.GetCustomAttribute<ParamsAttribute>() is { } parameter)
                property.SetValue(benchmark, parameter.Values[0]);
        foreach (var setup in type.GetMethods().Where(m => m.GetCustomAttribute<GlobalSetupAttribute>() is not null))
            setup.Invoke(benchmark, null);
        Assert.All(Benchmarks(type), method => Assert.NotNull(method.Invoke(benchmark, null)));
    }

    private static IEnumerable<MethodInfo> Benchmarks(Type type) =>
        type.GetMethods().Where(m => m.GetCustomAttribute<BenchmarkAttribute>() is not null);
}
