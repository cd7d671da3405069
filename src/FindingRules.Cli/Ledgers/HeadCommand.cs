using System.CommandLine;
using System.Text;
using FindingRules.Cli.Usage;
using FindingRules.Ledger;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Cli.Ledgers;

/// <summary><c>findingrules ledger head LOCATION</c>: a signed tree head.</summary>
internal static class HeadCommand
{
    public const string Help = """
        findingrules ledger head LOCATION [--ledger-key FILE] [--size NUMBER]

        Signs the tree over all records as it is now, and writes the head as JSON. Keep it where those who
        can write the ledger cannot: `findingrules ledger verify --head` finds any change to what it covers.

          LOCATION            the path of a file, or postgresql: and a connection string
          --ledger-key FILE   the signing key; beside a ledger's file, with .key after its name, unless said
                              otherwise
          --size NUMBER       of the first so many records only

        Examples:
          findingrules ledger head findingrules-ledger.db > head-2026-11-01.json
        """;

    public static Command Create(Terminal terminal)
    {
        var place = LedgerCommand.Location();
        var key = LedgerCommand.Text("--ledger-key", "a file");
        var size = new CountOption("--size", 0, long.MaxValue);
        var command = new Command("head") { place, key, size, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => LedgerCall.RunAsync(terminal, result.GetRequiredValue(place), async at =>
        {
            var options = new LedgerOptions { KeyFile = result.GetValue(key), BeginsWhereNone = false };
            await using var ledger = await RecordLedger.OpenAsync(at, options);
            var asked = size.Of(result);
            if (await ledger.GetTreeHeadAsync(asked, stop) is not { } head)
                return LedgerCall.Refuse(
                    terminal, LedgerUseMessages.SizeBeyondTree(asked!.Value, (await ledger.GetTreeHeadAsync(cancellation: stop))!.Size));
            terminal.Out.WriteLine(Encoding.UTF8.GetString(head.ToJson()));
            terminal.Out.Flush();
            return ExitCode.Fine;
        }));
        return command;
    }
}
