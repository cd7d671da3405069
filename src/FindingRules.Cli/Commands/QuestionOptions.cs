using System.CommandLine;
using FindingRules.Explaining;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Cli.Commands;

/// <summary>The options by which <c>read</c> is asked to explain instead.</summary>
internal sealed class QuestionOptions
{
    private readonly Option<string?> _why = Named("--why", "the id of a rule");
    private readonly Option<string?> _whyNot = Named("--why-not", "the id of a rule");
    private readonly Option<string?> _subject = Named("--subject", "a subject such as `right supraspinatus`");
    private readonly Option<bool> _whatIf = new("--what-if") { Arity = ArgumentArity.Zero };
    private readonly Option<bool> _askNext = new("--ask-next") { Arity = ArgumentArity.Zero };

    public IEnumerable<Option> All => [_why, _whyNot, _subject, _whatIf, _askNext];

    /// <summary>Null with no message: nothing is asked, a reading is wanted.</summary>
    public (Question? Question, Message? Message) Of(ParseResult result)
    {
        var subject = result.GetValue(_subject);
        Question?[] all =
        [
            result.GetValue(_why) is { } why ? new Question(QuestionSort.Why, why, subject) : null,
            result.GetValue(_whyNot) is { } whyNot ? new Question(QuestionSort.WhyNot, whyNot, subject) : null,
            result.GetValue(_whatIf) ? new Question(QuestionSort.WhatIf) : null,
            result.GetValue(_askNext) ? new Question(QuestionSort.AskNext) : null,
        ];
        var asked = all.OfType<Question>().ToArray();
        if (asked.Length > 1) return (null, ExplanationMessages.TwoQuestions(At(result)));
        if (subject is not null && asked is not [{ Rule: not null }])
            return (null, ExplanationMessages.NothingAskedOfRule(At(result), subject));
        return (asked.FirstOrDefault(), null);
    }

    private static Location At(ParseResult result) =>
        new SourceText("command line", "findingrules " + string.Join(' ', result.Tokens.Select(t => t.Value))).Whole;

    private static Option<string?> Named(string name, string what) => new(name) { HelpName = what, Arity = ArgumentArity.ExactlyOne };
}
