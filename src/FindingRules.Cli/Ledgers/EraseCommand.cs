using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using FindingRules.Cli.Usage;
using FindingRules.Ledger;
using FindingRules.Ledger.Erasing;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Cli.Ledgers;

internal sealed record EraseOptions(long? Days, ImmutableArray<Guid> Records, string Reason, string Actor, string? KeyFile, bool IsMeant);

/// <summary><c>findingrules ledger erase LOCATION</c>: takes the bodies of records away, and records that it did.</summary>
internal sealed class EraseCommand(Terminal terminal, EraseOptions options)
{
    private const int MostDays = 100 * 366;

    public const string Help = """
        findingrules ledger erase LOCATION --older-than DAYS [--yes]
        findingrules ledger erase LOCATION --record ID... [--reason CODE] [--yes]

        Erases the bodies of readings and of feedback: study, answer, what they are found by. That a record
        was there, when and with which pack, stays and can still be proven; a new record says what was
        erased.

          LOCATION            the path of a file, or postgresql: and a connection string
          --older-than DAYS   everything recorded more than so many days ago
          --record ID         this reading, and feedback on it; may be said several times
          --reason CODE       why, as a code of your own; retention or requested unless said otherwise
          --actor CODE        who erases; operator unless said otherwise
          --ledger-key FILE   the signing key; beside a ledger's file unless said otherwise
          --yes               erase; without it, it is only said how much would be erased

        Examples:
          findingrules ledger erase findingrules-ledger.db --older-than 3650
          findingrules ledger erase findingrules-ledger.db --older-than 3650 --yes

        Nothing brings an erased body back but a backup; backups have a retention of their own.
        `serve` erases by itself where FindingRules__RetentionDays is set.
        """;

    public static Command Create(Terminal terminal)
    {
        var place = LedgerCommand.Location();
        var days = new CountOption("--older-than", 0, MostDays);
        var records = new Option<string[]>("--record") { HelpName = "the id of a record", Arity = ArgumentArity.OneOrMore };
        var reason = LedgerCommand.Text("--reason", "a code");
        var actor = LedgerCommand.Text("--actor", "a code");
        var key = LedgerCommand.Text("--ledger-key", "a file");
        var yes = LedgerCommand.Flag("--yes");
        var command = new Command("erase") { place, days, records, reason, actor, key, yes, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) =>
        {
            var written = new WrittenCommand([.. result.Tokens.Select(t => t.Value)]);
            var (age, named) = (days.Of(result), result.GetValue(records) ?? []);
            if ((age is null) == (named.Length == 0)) return Refuse(terminal, LedgerUseMessages.EraseWhat(written.End));
            var wrong = named.Where(n => !Guid.TryParseExact(n, "D", out _)).Select(n => LedgerUseMessages.NotAnId(written.Find(n), n));
            if (wrong.FirstOrDefault() is { } first) return Refuse(terminal, first);
            var options = new EraseOptions(
                age, [.. named.Select(Guid.Parse)], result.GetValue(reason) ?? (age is null ? "requested" : "retention"),
                result.GetValue(actor) ?? "operator", result.GetValue(key), result.GetValue(yes));
            foreach (var word in new[] { options.Reason, options.Actor })
                if (!ErasureRequest.IsCode(word)) return Refuse(terminal, LedgerUseMessages.ErasureCode(written.Find(word), word));
            return LedgerCall.RunAsync(
                terminal, result.GetRequiredValue(place), at => new EraseCommand(terminal, options).RunAsync(at, stop));
        });
        return command;
    }

    private Task<int> RunAsync(LedgerLocation at, CancellationToken stop)
    {
        var before = options.Days is { } days ? TimeProvider.System.GetUtcNow().AddDays(-days) : (DateTimeOffset?)null;
        return options.IsMeant ? EraseAsync(at, before, stop) : CountAsync(at, before, stop);
    }

    private async Task<int> CountAsync(LedgerLocation at, DateTimeOffset? before, CancellationToken stop)
    {
        await using var reader = await LedgerReader.OpenAsync(at);
        if (await MissingAsync(id => reader.FindAsync(id, stop)) is { } missing) return LedgerCall.Refuse(terminal, missing);
        var count = before is { } moment
            ? await reader.CountErasableAsync(moment, stop)
            : await reader.CountErasableAsync(options.Records, stop);
        return Say($"{Bodies(count)} would be erased. Nothing was; --yes erases.");
    }

    private async Task<int> EraseAsync(LedgerLocation at, DateTimeOffset? before, CancellationToken stop)
    {
        await using var ledger = await RecordLedger.OpenAsync(
            at, new LedgerOptions { KeyFile = options.KeyFile, BeginsWhereNone = false });
        if (await MissingAsync(id => ledger.FindAsync(id, stop)) is { } missing) return LedgerCall.Refuse(terminal, missing);
        var result = await ledger.EraseAsync(
            new ErasureRequest { Actor = options.Actor, Reason = options.Reason, Before = before, Records = options.Records }, stop);
        if (!result.AreBytesGone) terminal.Error.WriteLine(
            "Somebody reads the ledger. What was erased is in its files until that ends and the ledger is written or closed.");
        return Say(result.Records.IsEmpty
            ? "There was nothing to erase."
            : $"{Bodies(result.Erased)} erased; {(result.Records.Length == 1 ? "the record that says" : "the records that say")} so: "
                + string.Join(' ', result.Records));
    }

    private async Task<Message?> MissingAsync(Func<Guid, Task<FindingRules.Ledger.Records.LedgerRecord?>> find)
    {
        foreach (var id in options.Records)
            if (await find(id) is null) return RecordMessages.NoSuchRecord(id.ToString());
        return null;
    }

    private int Say(string line)
    {
        terminal.Out.WriteLine(line);
        terminal.Out.Flush();
        return ExitCode.Fine;
    }

    private static Task<int> Refuse(Terminal terminal, Message message) => Task.FromResult(LedgerCall.Refuse(terminal, message));

    private static string Bodies(long count) =>
        string.Create(CultureInfo.InvariantCulture, $"{count:N0} {(count == 1 ? "body" : "bodies")}");
}
