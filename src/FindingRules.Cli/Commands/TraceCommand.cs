using System.CommandLine;
using FindingRules.Cli.Ledgers;
using FindingRules.Cli.Usage;
using FindingRules.Explaining;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Cli.Commands;

/// <summary>
/// <c>findingrules trace PACK STUDY...</c>: why the reading of each study says what it says; with <c>--ledger</c>, of a recorded one.
/// </summary>
internal sealed class TraceCommand(Terminal terminal)
{
    public const string Help = """
        findingrules trace PACK STUDY... [--output text|json]
        findingrules trace ID --ledger LOCATION [--again] [--output text|json]

        Says why the reading of a study says each of its lines: the rule in its file with every part of
        its condition, what the study has for each, the rules behind those that it rests on, what was
        worked out, what could have overruled or withheld it, and the sources.

          PACK               the folder that holds `pack.yaml`
          STUDY              a JSON file with one study; an NDJSON file (.ndjson, .jsonl) with one a
                             line; or - for standard input
          ID                 the id of a recorded reading; it is explained from the pack as it was then
          --ledger LOCATION  where it was recorded: the path of a file, or postgresql: and a connection
                             string
          --again            evaluate the recorded study anew, and say whether the reading is the same,
                             byte for byte; exit code 4 where it is not
          --output text      for a person (the default)
          --output json      for a program, in the form of schemas/trace.schema.json; of a recorded
                             reading `{record, again, trace}`

        Examples:
          findingrules trace rules/msk-ultrasound study.json
          findingrules trace 0198c5a0-7d3e-7c41-9a55-6f2f0d4b8e11 --ledger findingrules-ledger.db --again

        A study is evaluated anew; the same pack, engine and study give the same reading and the same
        explanation. `findingrules read --why RULE` asks about one rule.
        """;

    public static Command Create(Terminal terminal)
    {
        var pack = new Argument<string>("PACK") { Description = "the folder that holds `pack.yaml`, or with --ledger the ID of a record" };
        var studies = new Argument<string[]>("STUDY")
        {
            Arity = ArgumentArity.ZeroOrMore,
            Description = "a JSON or NDJSON file, or - for standard input",
        };
        var ledger = LedgerCommand.Text("--ledger", "a file, or postgresql: and a connection string");
        var again = LedgerCommand.Flag("--again");
        var output = OutputOption.Create();
        var command = new Command("trace") { pack, studies, ledger, again, output, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) =>
        {
            var (first, rest) = (result.GetRequiredValue(pack), result.GetValue(studies) ?? []);
            var trace = new TraceCommand(terminal);
            if (result.GetValue(ledger) is not { } place)
                return trace.RunAsync(result, first, rest, studies, result.IsJson(output), result.GetValue(again), stop);
            var written = new WrittenCommand([.. result.Tokens.Select(t => t.Value)]);
            if (rest.Length > 0) return trace.Refuse(CommandToolMessages.OneTooMany(written.Find(rest[0]), rest[0], "trace"));
            return Guid.TryParseExact(first, "D", out var id)
                ? Task.Run(() => new RecordTrace(terminal, result.IsJson(output), result.GetValue(again)).RunAsync(place, id, stop))
                : trace.Refuse(LedgerUseMessages.NotAnId(written.Find(first), first));
        });
        return command;
    }

    private Task<int> RunAsync(
        ParseResult result, string pack, string[] studies, Argument argument, bool isJson, bool isAgain, CancellationToken stop)
    {
        var written = new WrittenCommand([.. result.Tokens.Select(t => t.Value)]);
        if (isAgain) return Refuse(LedgerUseMessages.AgainWithoutLedger(written.Find("--again")));
        if (studies.Length == 0)
            return Refuse(CommandToolMessages.MissingArgument(written.End, "trace", argument.Name, argument.Description!));
        return Task.Run(() => new ReadCommand(terminal).Run(
            new ReadOptions(pack, [.. studies], isJson, WantsProgress: false, new Question(QuestionSort.Trace)), stop));
    }

    private Task<int> Refuse(Message message) => Task.FromResult(LedgerCall.Refuse(terminal, message));
}
