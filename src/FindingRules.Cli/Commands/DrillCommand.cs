using System.CommandLine;
using System.Globalization;
using System.Security.Cryptography;
using FindingRules.Cli.Drill;
using FindingRules.Cli.Usage;
using FindingRules.Drill;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Text;

namespace FindingRules.Cli.Commands;

internal sealed record DrillOptions(string Pack, string? Seed, string? Count, string? Progress, string? Learner, string? Export);

/// <summary><c>findingrules drill PACK</c>: questions about the cases of a pack, for trainees.</summary>
internal sealed class DrillCommand(Terminal terminal)
{
    private const int MostQuestions = 500;
    private const int FewQuestions = 10;
    private const int MostDrawn = 1_000_000;

    public const string Help = """
        findingrules drill PACK [--count N] [--seed N] [--progress FILE [--learner KEY]]
        findingrules drill PACK --export FILE [--count N] [--seed N]

        Asks about the invented cases of a pack, and explains each answer. Of a case it shows the
        findings; you choose what can be said, what to do, or what to look at, and name the findings that
        decide it. The answer says whether that was right, right for the wrong reason, or which finding
        was overlooked, with the proof that `trace` gives.

          PACK             the folder that holds `pack.yaml`
          --count N        so many questions, 10 unless said otherwise
          --seed N         the same seed asks the same questions; without it, one is drawn and shown
          --progress FILE  keeps how it went, and asks sooner again what was answered wrong
          --learner KEY    an opaque key such as L-07 that the file belongs to; never a name
          --export FILE    writes the questions, and apart from them the answers, to a .json or .md file

        Answer with the number of an option; Enter leaves a question out, q ends.

        Examples:
          findingrules drill rules/msk-ultrasound
          findingrules drill rules/msk-ultrasound --seed 7 --count 20 --progress drill.json
          findingrules drill rules/msk-ultrasound --seed 7 --export questions.md

        Support for a qualified reader, not a diagnosis. Local protocols and licensed practice decide.
        """;

    public static Command Create(Terminal terminal)
    {
        var pack = new Argument<string>("PACK") { Description = "the folder that holds `pack.yaml`" };
        var (seed, count) = (Named("--seed", "a whole number"), Named("--count", "a whole number"));
        var (progress, learner) = (Named("--progress", "a file"), Named("--learner", "an opaque key"));
        var export = Named("--export", "a file that ends in .json or .md");
        var command = new Command("drill") { pack, seed, count, progress, learner, export, PageOption.Help(Help, terminal) };
        command.SetAction((result, stop) => Task.Run(() => new DrillCommand(terminal).Run(
            new DrillOptions(
                result.GetRequiredValue(pack), result.GetValue(seed), result.GetValue(count), result.GetValue(progress),
                result.GetValue(learner), result.GetValue(export)),
            stop)));
        return command;
    }

    private int Run(DrillOptions options, CancellationToken stop)
    {
        var messages = new MessageBag();
        var seed = Number("--seed", options.Seed, 0, (long)DrillDeck.MostSeed, messages) ?? RandomNumberGenerator.GetInt32(MostDrawn);
        var count = Number("--count", options.Count, 1, MostQuestions, messages) ?? FewQuestions;
        if (options.Learner is { } learner && !DrillProgress.IsOpaque(learner))
            messages.Add(DrillMessages.LearnerNotOpaque(At(learner), learner));
        if (messages.HasErrors) return Refuse(messages, ExitCode.NotDone);

        var load = PackFolder.Load(options.Pack);
        if (load.Pack is null)
        {
            MessageText.Write(terminal.Error, load.Messages, terminal.StyleFor(options.Pack));
            return ExitCode.Of(load.Messages);
        }
        var deck = DrillDeck.Of(load.Pack);
        if (deck.Draw((ulong)seed, 1).IsEmpty)
        {
            messages.Add(DrillMessages.NothingToAsk(At(options.Pack), load.Pack.Pack.Name));
            return Refuse(messages, ExitCode.Wrong);
        }
        if (options.Export is { } path) return Export(deck, path, (ulong)seed, (int)count, messages);
        var file = options.Progress is null ? null : new ProgressFile(options.Progress);
        if (Begin(deck, file, options.Learner, messages) is not { } progress) return Refuse(messages, ExitCode.NotDone);
        var session = new DrillSession(deck, progress, (ulong)seed, (int)count);
        using var talk = new DrillTalk(terminal, deck, session, file);
        var isKept = talk.Run((ulong)seed, (int)count, messages, stop);
        return isKept ? ExitCode.Fine : Refuse(messages, ExitCode.NotDone);
    }

    private static DrillProgress? Begin(DrillDeck deck, ProgressFile? file, string? learner, MessageBag messages)
    {
        var anew = new DrillProgress { Pack = deck.Pack.Name, Learner = learner };
        if (file is null) return anew;
        if (file.Read(messages) is not { } read) return messages.HasErrors ? null : anew;
        if (read.Pack != deck.Pack.Name)
            messages.Add(DrillMessages.ProgressOfOther(At(file.Path), file.Path, "the pack", read.Pack, deck.Pack.Name));
        if (learner is not null && read.Learner != learner)
            messages.Add(DrillMessages.ProgressOfOther(At(file.Path), file.Path, "the learner", read.Learner ?? "", learner));
        return messages.HasErrors ? null : read;
    }

    private int Export(DrillDeck deck, string path, ulong seed, int count, MessageBag messages)
    {
        var ending = Path.GetExtension(path);
        if (ending is not (".json" or ".md"))
        {
            messages.Add(DrillMessages.ExportEnding(At(path), path));
            return Refuse(messages, ExitCode.NotDone);
        }
        var sheet = DrillSheet.Of(deck, seed, count, hasAnswers: true);
        var bytes = ending == ".md"
            ? System.Text.Encoding.UTF8.GetBytes(DrillMarkdown.Of(sheet))
            : DrillJson.ToBytes(sheet, isPretty: true);
        if (!WholeFile.Write(path, bytes, messages)) return Refuse(messages, ExitCode.NotDone);
        terminal.Out.WriteLine($"{sheet.Questions.Length} questions with answers written to {path} (seed {seed}).");
        terminal.Out.WriteLine(deck.Notice);
        terminal.Out.Flush();
        return ExitCode.Fine;
    }

    private static long? Number(string option, string? written, long least, long most, MessageBag messages)
    {
        if (written is null) return null;
        if (long.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
            return number;
        messages.Add(DrillMessages.NumberOutOfRange(At(written), option, written, least, most));
        return null;
    }

    private int Refuse(MessageBag messages, int code)
    {
        MessageText.Write(terminal.Error, messages.Sorted(), terminal.Style);
        return code;
    }

    private static Location At(string words) => new SourceText("command line", words).Whole;

    private static Option<string?> Named(string name, string what) => new(name) { HelpName = what, Arity = ArgumentArity.ExactlyOne };
}
