using System.CommandLine;
using FindingRules.Cli.Usage;
using FindingRules.Service;

namespace FindingRules.Cli.Commands;

/// <summary><c>findingrules serve PACKFOLDER</c>: the HTTP service.</summary>
internal static class ServeCommand
{
    public const string Name = "serve";

    public const string Help = """
        findingrules serve PACKFOLDER... [--urls ADDRESS] [--ledger LOCATION] [--ledger-key FILE]
        findingrules serve --check ADDRESS

        Answers over HTTP: POST /v1/readings takes a study and gives a reading; the page at / describes
        it all. A pack folder holds `pack.yaml`, or folders that do. It is watched: a change is taken up
        at once, and a pack with errors never replaces a good one.

          --urls ADDRESS   where to listen; http://127.0.0.1:8080 unless said otherwise, several
                           separated by semicolons
          --ledger LOCATION
                           where answers are recorded: the path of a file, which is begun where there
                           is none; postgresql: and a connection string; or none. In the working
                           directory, findingrules-ledger.db, unless said otherwise
          --ledger-key FILE
                           the key that signs the ledger; beside a ledger's file unless said otherwise
          --check ADDRESS  asks the service that runs there whether it can read studies, and ends:
                           0 yes, 1 no

        Examples:
          findingrules serve rules/msk-ultrasound
          findingrules serve packs --urls http://localhost:9090

        Ctrl-C stops it, after what was asked has been answered.
        """;

    public static Command Create(Terminal terminal)
    {
        var folders = new Argument<string[]>("PACKFOLDER")
        {
            // None where the settings name them, or where a running service is only asked how it is.
            Arity = ArgumentArity.ZeroOrMore,
            Description = "a folder that holds `pack.yaml`, or folders that do",
        };
        var urls = new Option<string?>("--urls") { HelpName = "an address such as http://127.0.0.1:8080" };
        var ledger = new Option<string?>("--ledger") { HelpName = "a file, postgresql: and a connection string, or none" };
        var key = new Option<string?>("--ledger-key") { HelpName = "a file" };
        var check = new Option<string?>("--check") { HelpName = "address of a running service" };
        var command = new Command(Name) { folders, urls, ledger, key, check, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => result.GetValue(check) is { } running
            ? ServiceHealth.CheckAsync(running, terminal.Out, stop)
            : ServiceHost.RunAsync(
                new ServiceOptions
                {
                    PackFolders = [.. result.GetValue(folders) ?? []],
                    Urls = result.GetValue(urls) is { } addresses ? [.. addresses.Split(';')] : [],
                    Ledger = result.GetValue(ledger),
                    LedgerKey = result.GetValue(key),
                },
                terminal.Error, stop));
        return command;
    }
}
