using System.CommandLine;
using FindingRules.Cli.Usage;
using FindingRules.Service;

namespace FindingRules.Cli.Commands;

/// <summary><c>findingrules serve PACKFOLDER</c>: the HTTP service.</summary>
internal static class ServeCommand
{
    public const string Name = "serve";

    public const string Help = """
        findingrules serve PACKFOLDER... [--urls ADDRESS]
        findingrules serve --check ADDRESS

        Answers over HTTP: POST /v1/readings takes a study and gives a reading; the page at / describes
        it all. A pack folder holds `pack.yaml`, or folders that do. It is watched: a change is taken up
        at once, and a pack with errors never replaces a good one.

          --urls ADDRESS   where to listen; http://127.0.0.1:8080 unless said otherwise, several
                           separated by semicolons
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
        var check = new Option<string?>("--check") { HelpName = "address of a running service" };
        var command = new Command(Name) { folders, urls, check, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => result.GetValue(check) is { } running
            ? ServiceHealth.CheckAsync(running, terminal.Out, stop)
            : ServiceHost.RunAsync(
                new ServiceOptions
                {
                    PackFolders = [.. result.GetValue(folders) ?? []],
                    Urls = result.GetValue(urls) is { } addresses ? [.. addresses.Split(';')] : [],
                },
                terminal.Error, stop));
        return command;
    }
}
