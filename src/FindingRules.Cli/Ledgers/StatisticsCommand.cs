using System.CommandLine;
using System.Text;
using FindingRules.Cli.Usage;
using FindingRules.Service.Records;

namespace FindingRules.Cli.Ledgers;

/// <summary><c>findingrules ledger statistics LOCATION RULE</c>: how a rule is doing.</summary>
internal static class StatisticsCommand
{
    public const string Help = """
        findingrules ledger statistics LOCATION RULE [--output text|json]

        Counts what became of a rule, by month and pack version: readings in which it fired, was shown,
        could not be decided and for want of what, was borderline; suggestions accepted, and overridden and
        why.

          LOCATION        the path of a file, or postgresql: and a connection string
          RULE            the id of a rule
          --output text   for a person (the default); json for a program, as /v1/rules/RULE/statistics

        Examples:
          findingrules ledger statistics findingrules-ledger.db CUFF-010
        """;

    public static Command Create(Terminal terminal)
    {
        var place = LedgerCommand.Location();
        var rule = new Argument<string>("RULE") { Description = "the id of a rule" };
        var output = OutputOption.Create();
        var command = new Command("statistics") { place, rule, output, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => LedgerCall.ReadAsync(terminal, result.GetRequiredValue(place), async reader =>
        {
            var id = result.GetRequiredValue(rule);
            var statistics = await reader.GetStatisticsAsync(id, stop);
            if (statistics.Months.IsEmpty && await KnownRules.UnknownAsync(reader, id) is { } unknown)
                return LedgerCall.Refuse(terminal, unknown);
            if (result.IsJson(output)) terminal.Out.WriteLine(Encoding.UTF8.GetString(RecordJson.ToBytes(statistics)));
            else StatisticsText.Write(terminal.Out, statistics);
            terminal.Out.Flush();
            return ExitCode.Fine;
        }));
        return command;
    }
}
