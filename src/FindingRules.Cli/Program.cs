using FindingRules.Cli;

using var terminal = Terminal.OfProcess();
return await CommandLine.RunAsync(args, terminal);
