using System.CommandLine;
using FindingRules.Cli.Usage;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli.Commands;

/// <summary><c>findingrules code FR3001</c>: the page behind a message.</summary>
internal sealed class CodeCommand(Terminal terminal)
{
    public const string Help = """
        findingrules code [FRnnnn]

        Explains a message: what it means, an example that causes it, and the same mended. Without a code
        it lists them all.

        Examples:
          findingrules code FR3001
          findingrules code
        """;

    public static Command Create(Terminal terminal)
    {
        var code = new Argument<string?>("FRnnnn") { Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("code") { code, PageOption.Help(Help, terminal) };
        command.SetAction(result => new CodeCommand(terminal).Run(result.GetValue(code)));
        return command;
    }

    private int Run(string? code) => code is null ? List() : Show(code);

    private int List()
    {
        foreach (var code in MessagePages.Codes) terminal.Out.WriteLine(TitleOf(code));
        return ExitCode.Fine;
    }

    private int Show(string written)
    {
        var code = written.All(char.IsAsciiDigit) ? $"FR{written.PadLeft(4, '0')}" : written.ToUpperInvariant();
        if (MessagePages.Codes.Contains(code) && MessagePages.Find(code) is { } page)
        {
            terminal.Out.WriteLine(page.TrimEnd());
            return ExitCode.Fine;
        }
        var help = Spelling.Closest(code, MessagePages.Codes) is { } closest ? $"did you mean {TitleOf(closest)}?" : null;
        MessageText.Write(terminal.Error, [ToolMessages.UnknownCode(written, help)], terminal.Style);
        return ExitCode.NotDone;
    }

    private static string TitleOf(string code) => MessagePages.Find(code)?.Split('\n')[0].TrimStart('#', ' ').TrimEnd() ?? code;
}
