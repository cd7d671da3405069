using System.CommandLine;
using FindingRules.Cli.Ledgers;
using FindingRules.Cli.Usage;

namespace FindingRules.Cli.Commands;

internal static class AllCommands
{
    public const string Help = """
        findingrules: rule packs for musculoskeletal ultrasound

        Usage:
          findingrules read PACK STUDY...    suggest impressions and next steps for studies
          findingrules trace PACK STUDY...   say why readings say what they say
          findingrules review PACK           check a pack and run its cases
          findingrules drill PACK            ask about its cases, for trainees
          findingrules serve PACKFOLDER...   answer over HTTP
          findingrules ledger COMMAND ...    verify, export, erase and search what was recorded
          findingrules code [FRnnnn]         explain a message
          findingrules --version

        `findingrules COMMAND --help` says what a command takes, with examples.

        Results go to standard output, messages to standard error. Exit codes: 0 fine; 1 the tool could
        not do its work; 2 doubts, where asked to fail on them; 3 the pack or a study is wrong, or a case
        failed; 4 the ledger does not verify, or a recorded reading does not come out again.

        Support for a qualified reader, not a diagnosis. Local protocols and licensed practice decide.
        """;

    public static Command Create(Terminal terminal) => new("findingrules")
    {
        PageOption.Help(Help, terminal),
        new PageOption("--version", $"findingrules {Version}", terminal),
        ReadCommand.Create(terminal),
        TraceCommand.Create(terminal),
        ReviewCommand.Create(terminal),
        DrillCommand.Create(terminal),
        ServeCommand.Create(terminal),
        LedgerCommand.Create(terminal),
        CodeCommand.Create(terminal),
    };

    private static string Version => typeof(AllCommands).Assembly.GetName().Version is { } version ? version.ToString(3) : "";
}
