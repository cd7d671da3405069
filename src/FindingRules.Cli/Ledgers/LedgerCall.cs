using FindingRules.Ledger;
using FindingRules.Ledger.Failures;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli.Ledgers;

/// <summary>What all commands about a ledger have in common: where it lies, and how its failures are told.</summary>
internal static class LedgerCall
{
    public static Task<int> RunAsync(Terminal terminal, string place, Func<LedgerLocation, Task<int>> work)
    {
        var messages = new MessageBag();
        var location = LedgerLocation.Read(place, messages);
        return location is null
            ? Task.FromResult(Refuse(terminal, [.. messages.Sorted()]))
            : RunAsync(terminal, place, () => work(location));
    }

    public static Task<int> ReadAsync(Terminal terminal, string place, Func<LedgerReader, Task<int>> work) =>
        RunAsync(terminal, place, async location =>
        {
            await using var reader = await LedgerReader.OpenAsync(location);
            return await work(reader);
        });

    public static int Refuse(Terminal terminal, params IEnumerable<Message> messages)
    {
        terminal.Out.Flush();
        MessageText.Write(terminal.Error, [.. messages], terminal.Style);
        return ExitCode.NotDone;
    }

    private static async Task<int> RunAsync(Terminal terminal, string place, Func<Task<int>> work)
    {
        try
        {
            return await work();
        }
        catch (LedgerException e)
        {
            return Refuse(terminal, e.Told);
        }
        catch (OperationCanceledException)
        {
            return Refuse(terminal, ToolMessages.Stopped(place, null));
        }
    }
}
