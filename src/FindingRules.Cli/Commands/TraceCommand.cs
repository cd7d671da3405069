using System.CommandLine;
using FindingRules.Cli.Usage;
using FindingRules.Explaining;

namespace FindingRules.Cli.Commands;

/// <summary><c>findingrules trace PACK STUDY...</c>: why the reading of each study says what it says.</summary>
internal static class TraceCommand
{
    public const string Help = """
        findingrules trace PACK STUDY... [--output text|json]

        Says why the reading of a study says each of its lines: the rule in its file with every part of
        its condition, what the study has for each, the rules behind those that it rests on, what was
        worked out, what could have overruled or withheld it, and the sources.

          PACK               the folder that holds `pack.yaml`
          STUDY              a JSON file with one study; an NDJSON file (.ndjson, .jsonl) with one a
                             line; or - for standard input
          --output text      for a person (the default)
          --output json      for a program, in the form of schemas/trace.schema.json

        Examples:
          findingrules trace rules/msk-ultrasound study.json
          findingrules trace rules/msk-ultrasound study.json --output json

        The study is evaluated anew; the same pack, engine and study give the same reading and the same
        explanation. `findingrules read --why RULE` asks about one rule.
        """;

    public static Command Create(Terminal terminal)
    {
        var pack = new Argument<string>("PACK") { Description = "the folder that holds `pack.yaml`" };
        var studies = new Argument<string[]>("STUDY")
        {
            Arity = ArgumentArity.OneOrMore,
            Description = "a JSON or NDJSON file, or - for standard input",
        };
        var output = OutputOption.Create();
        var command = new Command("trace") { pack, studies, output, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => Task.Run(() => new ReadCommand(terminal).Run(
            new ReadOptions(
                result.GetRequiredValue(pack), [.. result.GetRequiredValue(studies)], result.IsJson(output), WantsProgress: false,
                new Question(QuestionSort.Trace)),
            stop)));
        return command;
    }
}
