using BenchmarkDotNet.Running;
using FindingRules.Benchmarks;
using FindingRules.Benchmarks.Http;

if (args is ["http", .. var rest]) return HttpCommand.Run(rest);
BenchmarkSwitcher.FromAssembly(typeof(ReadingBenchmarks).Assembly).Run(args);
return 0;
