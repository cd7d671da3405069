using System.Collections.Immutable;
using System.CommandLine;
using FindingRules.Cli.Input;
using FindingRules.Cli.Output;
using FindingRules.Cli.Usage;
using FindingRules.Explaining;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Packs;

namespace FindingRules.Cli.Commands;

/// <param name="Asked">What to explain instead of reading; null for a reading.</param>
internal sealed record ReadOptions(string Pack, ImmutableArray<string> Studies, bool IsJson, bool WantsProgress, Question? Asked);

/// <summary><c>findingrules read PACK STUDY...</c>: what the rules suggest for each study.</summary>
internal sealed class ReadCommand(Terminal terminal)
{
    public const string Help = """
        findingrules read PACK STUDY... [--output text|json] [--progress]
        findingrules read PACK STUDY... --why RULE | --why-not RULE [--subject SUBJECT]
        findingrules read PACK STUDY... --what-if | --ask-next

        Suggests impressions, next steps and cautions for studies, and says what is still missing.

          PACK               the folder that holds `pack.yaml`
          STUDY              a JSON file with one study; an NDJSON file (.ndjson, .jsonl) with one a
                             line; or - for standard input, which may be either
          --output text      for a person: the impression to paste, then what it rests on (the default)
          --output json      for a program: the reading; one a line where there is more than one
          --progress         count on standard error, also where no person watches it

        Instead of the reading, an explanation of it:
          --why RULE         how a rule came out, with each part of its condition
          --why-not RULE     what keeps a rule from applying, and the smallest changes to the findings
                             after which it would
          --subject SUBJECT  ask of this subject only, such as "right supraspinatus"
          --what-if          the smallest changes that would take back each line of the reading
          --ask-next         what each missing finding would lead to, the weightiest first

        Examples:
          findingrules read rules/msk-ultrasound study.json
          findingrules read rules/msk-ultrasound march.ndjson --output json > readings.ndjson
          findingrules read rules/msk-ultrasound study.json --why-not RET-010
          reporting-export | findingrules read rules/msk-ultrasound -

        A study that is wrong does not spoil the others: where its reading would stand, the answer says
        that there is none, and the exit code is 3.
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
        var progress = new Option<bool>("--progress") { Arity = ArgumentArity.Zero };
        var questions = new QuestionOptions();
        var command = new Command("read") { pack, studies, output, progress, PageOption.Help(Help, terminal) };
        foreach (var option in questions.All) command.Add(option);
        command.SetAction((result, stop) => Task.Run(() => questions.Of(result) switch
        {
            { Message: { } message } => Refuse(terminal, message),
            { Question: var question } => new ReadCommand(terminal).Run(
                new ReadOptions(
                    result.GetRequiredValue(pack), [.. result.GetRequiredValue(studies)], result.IsJson(output),
                    result.GetValue(progress), question),
                stop),
        }));
        return command;
    }

    private static int Refuse(Terminal terminal, Message message)
    {
        MessageText.Write(terminal.Error, [message], terminal.Style);
        return ExitCode.NotDone;
    }

    public int Run(ReadOptions options, CancellationToken stop)
    {
        var answers = new ReadAnswers(terminal, options.IsJson);
        var load = PackFolder.Load(options.Pack);
        if (load.Pack is null) return RefusePack(load.Messages, options, answers);
        var doubts = load.Messages.Where(m => m.Severity == Severity.Doubt).ToArray();
        if (doubts.Length > 0)
            terminal.Error.WriteLine(
                $"{options.Pack}: {MessageText.Count(doubts)} about the pack; `findingrules review` shows them");

        var studies = new StudyInputs(terminal.Input, LoadLimits.Default);
        var progress = new ReadProgress(terminal, options.WantsProgress);
        var code = ExitCode.Fine;
        foreach (var study in options.Studies.SelectMany(studies.Read))
        {
            if (stop.IsCancellationRequested) return Stopped(study, progress);
            var isAlone = options.Studies.Length == 1 && study.Line is null;
            var one = ReadOne(load.Pack, study, options.Asked, answers, isAlone);
            code = ExitCode.Worse(code, one);
            progress.Add(one != ExitCode.Fine);
        }
        progress.End();
        return code;
    }

    private static int ReadOne(CompiledPack pack, StudyInput study, Question? asked, ReadAnswers answers, bool isAlone)
    {
        if (study.Text is not { } text) return answers.None(study, [study.Problem!], isAlone);
        if (asked is not null)
        {
            var answer = pack.Explain(text, asked);
            return answer.Explanation is { } explanation
                ? answers.Explanation(explanation, asked.Sort, answer.Messages, isAlone)
                : answers.NoExplanation(study, answer.Messages, isAlone);
        }
        var read = pack.Read(text);
        return read.Reading is { } reading
            ? answers.Reading(reading, read.Messages, isAlone)
            : answers.None(study, read.Messages, isAlone);
    }

    private int RefusePack(ImmutableArray<Message> messages, ReadOptions options, ReadAnswers answers)
    {
        answers.NoPack(options.Pack, messages);
        terminal.Out.Flush();
        return ExitCode.Of(messages);
    }

    private int Stopped(StudyInput at, ReadProgress progress)
    {
        MessageText.Write(terminal.Error, [ToolMessages.Stopped(at.Source, progress.Count)], terminal.Style);
        return ExitCode.NotDone;
    }
}
