using System.CommandLine;
using System.Text;
using FindingRules.Cli.Usage;
using FindingRules.Ledger;
using FindingRules.Ledger.Exporting;

namespace FindingRules.Cli.Ledgers;

/// <summary><c>findingrules ledger export LOCATION</c>: all records as NDJSON.</summary>
internal static class ExportCommand
{
    public const string Help = """
        findingrules ledger export LOCATION [--from INDEX] [--progress]

        Writes all records that are there now, in their order, one a line: its place, the header whose hash
        is in the tree, what it says, what was answered, and what it is found by. What was erased is null.

          LOCATION       the path of a file, or postgresql: and a connection string
          --from INDEX   begin with this record; the first is 0
          --progress     count on standard error, also where no person watches it

        Examples:
          findingrules ledger export findingrules-ledger.db > records.ndjson
        """;

    public static Command Create(Terminal terminal)
    {
        var place = LedgerCommand.Location();
        var from = new CountOption("--from", 0, long.MaxValue);
        var progress = LedgerCommand.Flag("--progress");
        var command = new Command("export") { place, from, progress, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => LedgerCall.ReadAsync(terminal, result.GetRequiredValue(place), reader =>
            WriteAsync(terminal, reader, from.Of(result) ?? 0, result.GetValue(progress), stop)));
        return command;
    }

    private static async Task<int> WriteAsync(
        Terminal terminal, LedgerReader reader, long from, bool wantsProgress, CancellationToken stop)
    {
        var ticker = new LedgerTicker(terminal, wantsProgress, "exported") { All = Math.Max(0, await reader.CountAsync(stop) - from) };
        try
        {
            using var text = new TextStream(terminal.Out);
            ticker.End(await ExportLines.WriteAsync(terminal.OutBytes ?? text, reader.ExportAsync(from, stop), ticker, stop));
            return ExitCode.Fine;
        }
        catch (IOException)
        {
            // The reader of our output has gone, and has what it wanted.
            return ExitCode.NotDone;
        }
    }

    /// <summary>UTF-8 bytes on their way to a writer of text.</summary>
    private sealed class TextStream(TextWriter to) : MemoryStream
    {
        private readonly Decoder _decoder = Encoding.UTF8.GetDecoder();

        public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
        {
            var characters = new char[_decoder.GetCharCount(buffer.Span, flush: false)];
            to.Write(characters, 0, _decoder.GetChars(buffer.Span, characters, flush: false));
            return ValueTask.CompletedTask;
        }
    }
}
