using BenchmarkDotNet.Running;
using FindingRules.Benchmarks;
using FindingRules.Benchmarks.Ledger;

if (args is ["ledger", .. var rest]) return await LedgerCommand.RunAsync(rest);
BenchmarkSwitcher.FromAssembly(typeof(ReadingBenchmarks).Assembly).Run(args);
return 0;
