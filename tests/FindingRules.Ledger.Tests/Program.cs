using FindingRules.Ledger.Tests.Processes;

return await Appender.RunAsync(args);
