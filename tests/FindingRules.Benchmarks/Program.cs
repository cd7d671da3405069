using BenchmarkDotNet.Running;
using FindingRules.Benchmarks;
using FindingRules.Benchmarks.Deciding;
using FindingRules.Benchmarks.Growth;
using FindingRules.Benchmarks.Http;
using FindingRules.Benchmarks.Ledger;
using FindingRules.Benchmarks.Loading;
using FindingRules.Benchmarks.Questions;

if (args is ["http", .. var ofHttp]) return HttpCommand.Run(ofHttp);
if (args is ["deciding", .. var ofDeciding]) return DecidingCommand.Run(ofDeciding);
if (args is ["growth", var folder]) return GrowthCommand.Run(folder);
if (args is ["load", .. var ofLoading]) return LoadCommand.Run(ofLoading);
if (args is ["questions"]) return QuestionCommand.Run();
if (args is ["ledger", .. var ofLedger]) return await LedgerCommand.RunAsync(ofLedger);
BenchmarkSwitcher.FromAssembly(typeof(ReadingBenchmarks).Assembly).Run(args);
return 0;
