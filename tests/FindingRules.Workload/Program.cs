using System.Globalization;
using FindingRules.Workload;

// Run by the build of FindingRules.Benchmarks, whose target says which file and how many rules.
File.WriteAllText(args[0], HandWrittenSource.Of(args[1..].Select(count => int.Parse(count, CultureInfo.InvariantCulture))));
