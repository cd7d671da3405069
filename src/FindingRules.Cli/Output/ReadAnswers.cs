using System.Collections.Immutable;
using System.Text;
using FindingRules.Cli.Input;
using FindingRules.Explaining;
using FindingRules.Model.Explanations;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Readings;
using FindingRules.Output;

namespace FindingRules.Cli.Output;

/// <summary>
/// What <c>read</c> writes for each study, in their order. As text, messages go to standard error; as JSON, the reason
/// why there is no reading stands in its place, for the program that reads on.
/// </summary>
internal sealed class ReadAnswers(Terminal terminal, bool isJson)
{
    private const int RuleWidth = 100;
    private const int ExplanationFamily = 8;
    private bool _hasAny;

    /// <param name="isAlone">It is the one study that was asked for: nothing need keep it apart from others.</param>
    public int Reading(Reading reading, ImmutableArray<Message> messages, bool isAlone)
    {
        if (isJson)
        {
            WriteJson(ReadingJson.ToBytes(reading, isAlone));
        }
        else
        {
            WriteRule();
            ReadingText.Write(terminal.Out, reading);
        }
        terminal.Out.Flush();
        MessageText.Write(terminal.Error, messages, terminal.Style);
        return ExitCode.Fine;
    }

    public int Explanation(Explanation explanation, QuestionSort sort, ImmutableArray<Message> messages, bool isAlone)
    {
        if (isJson)
        {
            WriteJson(ExplanationJson.ToBytes(explanation, isAlone));
        }
        else
        {
            WriteRule();
            ExplanationText.Write(terminal.Out, explanation, sort);
        }
        terminal.Out.Flush();
        MessageText.Write(terminal.Error, messages, terminal.Style);
        return ExitCode.Fine;
    }

    /// <summary>A question that cannot be answered says nothing of the study, and must not look as if it did.</summary>
    public int NoExplanation(StudyInput study, ImmutableArray<Message> messages, bool isAlone)
    {
        if (messages.All(m => m.Number / 1000 != ExplanationFamily)) return None(study, messages, isAlone);
        var none = new NoReading("the question cannot be answered", study.Source, study.Line, messages);
        if (isJson) WriteJson(ReadingJson.NoReadingToBytes(none, isAlone));
        else MessageText.Write(terminal.Error, messages, terminal.Style);
        terminal.Out.Flush();
        return ExitCode.Wrong;
    }

    public int None(StudyInput study, ImmutableArray<Message> messages, bool isAlone)
    {
        var subject = messages.Any(m => m.Number == 1) ? "the tool failed on the study" : $"the study has {MessageText.Count(messages)}";
        None(new NoReading(subject, study.Source, study.Line, messages), isAlone, terminal.Style);
        return ExitCode.Of(messages) is var code && code == ExitCode.Fine ? ExitCode.Wrong : code;
    }

    public void NoPack(string pack, ImmutableArray<Message> messages) =>
        None(
            new NoReading($"the pack has {MessageText.Count(messages)}, so no study was read", pack, null, messages),
            true, terminal.StyleFor(pack));

    private void None(NoReading none, bool isAlone, MessageStyle style)
    {
        if (isJson)
        {
            WriteJson(ReadingJson.NoReadingToBytes(none, isAlone));
            terminal.Out.Flush();
            return;
        }
        WriteRule();
        ReadingText.Write(terminal.Out, none);
        terminal.Out.Flush();
        MessageText.Write(terminal.Error, none.Messages, style);
    }

    private void WriteJson(ReadOnlyMemory<byte> json) => terminal.Out.Write($"{Encoding.UTF8.GetString(json.Span)}\n");

    private void WriteRule()
    {
        if (_hasAny) terminal.Out.WriteLine($"\n{new string('=', RuleWidth)}");
        _hasAny = true;
    }
}
