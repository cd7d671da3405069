using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using FindingRules.Drill;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli.Drill;

/// <summary>A session at the terminal: lines in, lines out; the end of the input ends it.</summary>
internal sealed class DrillTalk(Terminal terminal, DrillDeck deck, DrillSession session, ProgressFile? file) : IDisposable
{
    private readonly StreamReader _lines = new(terminal.Input, Encoding.UTF8);
    private readonly Dictionary<DrillVerdict, int> _verdicts = [];
    private int _leftOut;

    public void Dispose() => _lines.Dispose();

    /// <summary>False where the progress could not be kept.</summary>
    public bool Run(ulong seed, int count, MessageBag messages, CancellationToken stop)
    {
        terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{deck.Pack.Title}: {count} questions, seed {seed}."));
        terminal.Out.WriteLine(deck.Notice);
        var isKept = true;
        while (isKept && !stop.IsCancellationRequested && session.Next() is { } question)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine($"--- Question {session.Asked} of {count}");
            DrillText.Write(terminal.Out, question);
            if (Choice(question) is not { } choice) break;
            if (choice == 0) _leftOut++;
            else isKept = Answer(question, choice, messages);
        }
        Summary();
        return isKept;
    }

    private bool Answer(DrillQuestion question, int choice, MessageBag messages)
    {
        var deciding = question.Sort == DrillSort.LookNext ? [] : Deciding(question);
        if (deck.Judge(question.Id, choice, deciding, messages) is not { } judgement) return false;
        terminal.Out.WriteLine();
        DrillText.Write(terminal.Out, question, judgement);
        _verdicts[judgement.Verdict] = _verdicts.GetValueOrDefault(judgement.Verdict) + 1;
        session.Record(question, judgement.Verdict);
        return file is null || file.Keep(session.Progress, messages);
    }

    /// <summary>0 to leave the question out; null at the end of the session.</summary>
    private int? Choice(DrillQuestion question)
    {
        while (true)
        {
            var line = Ask($"Your answer, 1 to {question.Options.Length} (Enter leaves it out, q ends): ");
            if (line is null or "q") return null;
            if (line.Length == 0) return 0;
            if (int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                && number >= 1 && number <= question.Options.Length)
                return number;
            terminal.Out.WriteLine($"{Printable.Of(line)} is none of the options.");
        }
    }

    private ImmutableArray<string> Deciding(DrillQuestion question)
    {
        var marks = question.Subjects.SelectMany(s => s.Findings).Select(f => f.Mark).ToHashSet(StringComparer.Ordinal);
        while (true)
        {
            var line = Ask("Which findings decide it? Letters with spaces between (Enter to skip): ");
            var words = (line ?? "").Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries);
            var named = words.Select(w => w.ToLowerInvariant()).ToList();
            if (named.TrueForAll(marks.Contains)) return [.. named.Distinct()];
            terminal.Out.WriteLine($"{Printable.Of(named.First(n => !marks.Contains(n)))} is none of the letters shown.");
        }
    }

    private string? Ask(string prompt)
    {
        terminal.Out.Write(prompt);
        terminal.Out.Flush();
        var line = _lines.ReadLine()?.Trim();
        // What was typed ends a line of its own only where a person watches it.
        if (!terminal.IsOutWatched) terminal.Out.WriteLine();
        return line;
    }

    private void Summary()
    {
        int Of(DrillVerdict verdict) => _verdicts.GetValueOrDefault(verdict);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(
            $"Answered {_verdicts.Values.Sum()}: {Of(DrillVerdict.Right)} right, {Of(DrillVerdict.ReasonIncomplete)} right with the reason "
            + $"incomplete, {Of(DrillVerdict.WrongReason)} right for the wrong reason, {Of(DrillVerdict.Wrong)} wrong; "
            + $"{_leftOut} left out.");
        terminal.Out.WriteLine(deck.Notice);
        terminal.Out.Flush();
    }
}
