using BenchmarkDotNet.Running;
using FindingRules.Benchmarks;
using FindingRules.Benchmarks.Http;
using FindingRules.Benchmarks.Ledger;

if (args is ["http", .. var ofHttp]) return HttpCommand.Run(ofHttp);
if (args is ["ledger", .. var ofLedger]) return await LedgerCommand.RunAsync(ofLedger);
BenchmarkSwitcher.FromAssembly(typeof(ReadingBenchmarks).Assembly).Run(args);
return 0;
