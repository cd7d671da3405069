using System.CommandLine;
using FindingRules.Cli.Usage;

namespace FindingRules.Cli.Ledgers;

/// <summary><c>findingrules ledger COMMAND LOCATION</c>: what an auditor asks of a ledger, with no service running.</summary>
internal static class LedgerCommand
{
    public const string Help = """
        findingrules ledger COMMAND LOCATION ...

        Looks into a ledger, in which a service recorded what it answered.

          findingrules ledger verify LOCATION            is it whole and unchanged?
          findingrules ledger head LOCATION              a signed tree head, to be kept elsewhere
          findingrules ledger export LOCATION            all records, one a line
          findingrules ledger recall LOCATION RULE       every reading that rested on a rule
          findingrules ledger statistics LOCATION RULE   how a rule is doing
          findingrules ledger erase LOCATION ...         erase what is older than it may be

          LOCATION   as for `serve --ledger`: the path of a file, or postgresql: and a connection string

        `findingrules ledger COMMAND --help` says what each takes. A service may go on working meanwhile.
        `findingrules trace ID --ledger LOCATION` explains a recorded reading.
        """;

    public static Command Create(Terminal terminal) => new("ledger")
    {
        PageOption.Help(Help, terminal),
        VerifyCommand.Create(terminal),
        HeadCommand.Create(terminal),
        ExportCommand.Create(terminal),
        RecallCommand.Create(terminal),
        StatisticsCommand.Create(terminal),
        EraseCommand.Create(terminal),
    };

    public static Argument<string> Location() =>
        new("LOCATION") { Description = "the path of a ledger's file, or postgresql: and a connection string" };

    public static Option<string?> Text(string name, string what) => new(name) { HelpName = what, Arity = ArgumentArity.ExactlyOne };

    public static Option<bool> Flag(string name) => new(name) { Arity = ArgumentArity.Zero };
}
