using System.CommandLine;
using System.CommandLine.Parsing;
using FindingRules.Cli.Commands;
using FindingRules.Cli.Usage;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Text;

namespace FindingRules.Cli;

/// <summary>The command line: words in, exit code out. Nothing is thrown to the user.</summary>
internal static class CommandLine
{
    private static readonly ParserConfiguration Parsing = new() { EnablePosixBundling = false, ResponseFileTokenReplacer = null };

    // A command that waits for standard input cannot be asked to stop, only left.
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(500);

    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, Terminal terminal)
    {
        try
        {
            var result = CommandLineParser.Parse(AllCommands.Create(terminal), arguments, Parsing);
            if (UsageMistakes.Of(result, arguments) is { Count: > 0 } mistakes) return Refuse(mistakes, terminal);
            var code = await result.InvokeAsync(new InvocationConfiguration
            {
                Output = terminal.Out,
                Error = terminal.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = result.CommandResult.Command.Name == ServeCommand.Name ? null : Patience,
            });
            return code is >= ExitCode.Fine and <= ExitCode.NotVerified
                ? code
                : Refuse([ToolMessages.Stopped(result.CommandResult.Command.Name, null)], terminal);
        }
        catch (OperationCanceledException)
        {
            return ExitCode.NotDone;
        }
        catch (Exception bug)
        {
            var at = new SourceText("findingrules", "").Whole;
            return Refuse([ToolMessages.Internal(at, "running the command", Guard.Describe(bug))], terminal);
        }
    }

    private static int Refuse(IReadOnlyList<Message> messages, Terminal terminal)
    {
        MessageText.Write(terminal.Error, messages, terminal.Style);
        return ExitCode.NotDone;
    }
}
