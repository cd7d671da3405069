using BenchmarkDotNet.Running;
using FindingRules.Benchmarks;

BenchmarkSwitcher.FromAssembly(typeof(ReadingBenchmarks).Assembly).Run(args);
