using System.CommandLine;
using System.Text;
using FindingRules.Cli.Usage;
using FindingRules.Ledger;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Signing;
using FindingRules.Ledger.Verifying;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli.Ledgers;

internal sealed record VerifyOptions(string Place, string? HeadFile, string? KeyFile, bool IsJson, bool WantsProgress);

/// <summary><c>findingrules ledger verify LOCATION</c>: whether the records are those that were written.</summary>
internal sealed class VerifyCommand(Terminal terminal)
{
    public const string Help = """
        findingrules ledger verify LOCATION [--head FILE] [--key FILE] [--output text|json] [--progress]

        Checks every record of a ledger from its stored bytes, and against a signed tree head that was kept
        elsewhere. Needs the store and the head only; no service, no signing key, no right to write.

          LOCATION        the path of a file, or postgresql: and a connection string
          --head FILE     a signed tree head, as `findingrules ledger head` or /v1/ledger/tree-head gave it
          --key FILE      the public key that was kept of it, in PEM, as /v1/ledger/public-key gave it
          --output text   for a person (the default); json for a program
          --progress      count on standard error, also where no person watches it

        Examples:
          findingrules ledger verify findingrules-ledger.db --head head-2026-11-01.json
          findingrules ledger verify "postgresql:Host=db;Database=records" --head head.json

        What was erased is told from what was tampered with: each erasure is a record of its own. A tree
        head shows nothing of the records after it, nor that some of those were cut off. Bodies that a
        record after the head says were erased are counted apart: a head cannot show that this erasure was
        asked for. Without a head, only that the store agrees with itself is shown, which anybody who can
        write it can bring about.

        Exit codes: 0 it verifies; 4 it does not; 1 it could not be checked.
        """;

    public static Command Create(Terminal terminal)
    {
        var place = LedgerCommand.Location();
        var head = LedgerCommand.Text("--head", "a file with a signed tree head");
        var key = LedgerCommand.Text("--key", "a file with a public key");
        var output = OutputOption.Create();
        var progress = LedgerCommand.Flag("--progress");
        var command = new Command("verify") { place, head, key, output, progress, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => new VerifyCommand(terminal).RunAsync(
            new VerifyOptions(
                result.GetRequiredValue(place), result.GetValue(head), result.GetValue(key), result.IsJson(output),
                result.GetValue(progress)),
            stop));
        return command;
    }

    private Task<int> RunAsync(VerifyOptions options, CancellationToken stop)
    {
        var messages = new MessageBag();
        var head = ReadFile(options.HeadFile, messages, bytes => SignedTreeHead.Read(bytes), LedgerUseMessages.NotATreeHead);
        var key = ReadFile(
            options.KeyFile, messages, bytes => PublicKey.Read(Encoding.UTF8.GetString(bytes)), LedgerUseMessages.NotAPublicKey);
        return messages.HasErrors
            ? Task.FromResult(LedgerCall.Refuse(terminal, messages.Sorted()))
            : LedgerCall.RunAsync(terminal, options.Place, at => VerifyAsync(options, at, head, key, stop));
    }

    private async Task<int> VerifyAsync(
        VerifyOptions options, LedgerLocation at, SignedTreeHead? head, PublicKey? key, CancellationToken stop)
    {
        var ticker = new LedgerTicker(terminal, options.WantsProgress, "checked");
        try
        {
            var progress = new Direct(p => { ticker.All = p.All; ticker.Report(p.Done); });
            var report = await LedgerVerifier.VerifyAsync(at, head, key, progress, stop);
            ticker.End(report.Records);
            if (options.IsJson) terminal.Out.WriteLine(VerificationJson.Of(at.Name, report));
            else WriteText(at.Name, report, key is not null);
            terminal.Out.Flush();
            return report.IsSound ? ExitCode.Fine : ExitCode.NotVerified;
        }
        catch (LedgerException e) when (e.Failure == LedgerFailure.Damaged)
        {
            if (options.IsJson) terminal.Out.WriteLine(VerificationJson.Of(at.Name, e.Told));
            LedgerCall.Refuse(terminal, e.Told);
            return ExitCode.NotVerified;
        }
    }

    private void WriteText(string name, VerificationReport report, bool hasKey)
    {
        MessageText.Write(terminal.Error, report.Problems, terminal.Style);
        VerificationText.Write(terminal.Out, name, report, hasKey);
    }

    private static T? ReadFile<T>(string? path, MessageBag messages, Func<byte[], T?> read, Func<string, Message> not)
        where T : class
    {
        if (path is null) return null;
        try
        {
            if (read(File.ReadAllBytes(path)) is { } what) return what;
            messages.Add(not(path));
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            messages.Add(ToolMessages.FileNotFound(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            messages.Add(ToolMessages.FileNotReadable(path, "it is a folder, or may not be read"));
        }
        return null;
    }

    // Told at once and in order, unlike the framework's own, which tells on other threads.
    private sealed class Direct(Action<LedgerProgress> tell) : IProgress<LedgerProgress>
    {
        public void Report(LedgerProgress value) => tell(value);
    }
}
