using System.CommandLine;
using System.Globalization;
using System.Text;
using FindingRules.Cli.Usage;
using FindingRules.Ledger;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Withdrawing;
using FindingRules.Service.Records;

namespace FindingRules.Cli.Ledgers;

internal sealed record RecallOptions(string Rule, string? Revision, string? Pack, bool IsJson);

/// <summary><c>findingrules ledger recall LOCATION RULE</c>: every reading that rested on a rule.</summary>
internal sealed class RecallCommand(Terminal terminal, LedgerReader ledger, RecallOptions options)
{
    public const string Help = """
        findingrules ledger recall LOCATION RULE [--revision REVISION] [--pack NAME] [--output text|json]

        Lists every reading that rested on a rule, the newest first: its condition was true, whether it
        stood in the answer or only behind it. For a rule that was withdrawn, or is about to be.

          LOCATION              the path of a file, or postgresql: and a connection string
          RULE                  the id of a rule
          --revision REVISION   only this revision of the rule
          --pack NAME           only readings with this pack
          --output text         for a person (the default); json: one reading a line, for a program

        Examples:
          findingrules ledger recall findingrules-ledger.db CUFF-010
          findingrules ledger recall findingrules-ledger.db CUFF-010 --output json > recalled.ndjson

        Readings whose bodies were erased cannot be listed, for nobody can tell what they rested on; how
        many there are is said on standard error.
        """;

    private long _readings;
    private long _shown;

    public static Command Create(Terminal terminal)
    {
        var place = LedgerCommand.Location();
        var rule = new Argument<string>("RULE") { Description = "the id of a rule" };
        var revision = LedgerCommand.Text("--revision", "a revision of the rule");
        var pack = LedgerCommand.Text("--pack", "the name of a pack");
        var output = OutputOption.Create();
        var command = new Command("recall") { place, rule, revision, pack, output, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => LedgerCall.ReadAsync(terminal, result.GetRequiredValue(place), reader =>
        {
            var options = new RecallOptions(
                result.GetRequiredValue(rule), result.GetValue(revision), result.GetValue(pack), result.IsJson(output));
            return new RecallCommand(terminal, reader, options).RunAsync(stop);
        }));
        return command;
    }

    private async Task<int> RunAsync(CancellationToken stop)
    {
        var query = new LedgerQuery { Rule = options.Rule, Revision = options.Revision, Pack = options.Pack };
        await foreach (var record in ledger.FindAllAsync(query, stop)) Write(record);
        terminal.Out.Flush();
        if (_readings == 0 && await KnownRules.UnknownAsync(ledger, options.Rule, options.Revision, options.Pack) is { } unknown)
            return LedgerCall.Refuse(terminal, unknown);
        var erased = await ledger.CountErasedReadingsAsync(stop);
        if (!options.IsJson)
        {
            terminal.Out.WriteLine(Summary(isWhole: erased == 0));
            await WriteWithdrawalsAsync(stop);
        }
        terminal.Out.Flush();
        if (erased > 0) terminal.Error.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{erased:N0} {(erased == 1 ? "reading was" : "readings were")} erased: "
            + $"whether on {options.Rule} or not can no longer be told"));
        return ExitCode.Fine;
    }

    private async Task WriteWithdrawalsAsync(CancellationToken stop)
    {
        var isWithdrawn = false;
        await foreach (var record in ledger.FindAllAsync(new LedgerQuery { Kind = RecordKind.Withdrawal }, stop))
        {
            if (WithdrawalEntry.Read(record) is not { } withdrawal || withdrawal.Rule != options.Rule) continue;
            if (options.Pack is { } pack && withdrawal.Pack != pack) continue;
            isWithdrawn = true;
            terminal.Out.WriteLine($"{withdrawal.Rule} of pack {withdrawal.Pack} was withdrawn at {Moment(record.Time)}.");
        }
        if (!isWithdrawn) terminal.Out.WriteLine($"{options.Rule} was not withdrawn, as far as the ledger knows.");
    }

    private void Write(LedgerRecord record)
    {
        _readings++;
        var isShown = record.Body!.Terms.Rules.Any(r => r.Rule == options.Rule && r.Outcomes.HasFlag(RuleOutcomes.Shown));
        if (isShown) _shown++;
        terminal.Out.WriteLine(options.IsJson
            ? Encoding.UTF8.GetString(RecordJson.ToLine(record))
            : $"{Moment(record.Time)}  {record.Id}  study {record.Body.Terms.Study}  {record.Pack!.Name} {record.Pack.Version}"
                + (isShown ? "" : "  not shown"));
    }

    private string Summary(bool isWhole)
    {
        var asked = options.Rule
            + (options.Revision is { } revision ? $" of revision {revision}" : "") + (options.Pack is { } pack ? $" with pack {pack}" : "");
        return _readings > 0
            ? string.Create(CultureInfo.InvariantCulture,
                $"{_readings:N0} {(_readings == 1 ? "reading" : "readings")} rested on {asked}; in {_shown:N0} it stood in the answer.")
            : isWhole ? $"No reading rested on {asked}." : $"None of the readings that are left rested on {asked}.";
    }

    private static string Moment(DateTimeOffset time) =>
        time.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss 'UTC'", CultureInfo.InvariantCulture);
}
