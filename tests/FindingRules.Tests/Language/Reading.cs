using System.Collections.Immutable;
using FindingRules.Language;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>One text read by the language, with what came of it.</summary>
internal sealed record Reading(string Text, string? Canonical, string? Words, string? Conclusions, ImmutableArray<Message> Messages)
{
    public static Reading Rule(string scope, string text, Symbols? symbols = null, LoadLimits? limits = null)
    {
        symbols ??= ExampleSymbols.Plain;
        var bag = new MessageBag();
        var meaning = new RuleLanguage(symbols, limits ?? LoadLimits.Default, bag).ReadRule(Mapped(text), ScopeOf(symbols, scope));
        return new Reading(
            text, meaning is null ? null : ConditionText.Canonical(meaning.Condition),
            meaning is null ? null : ConditionText.Words(meaning.Condition),
            meaning is null ? null : ConditionText.Canonical(meaning.Conclusions), bag.Sorted());
    }

    public static Reading Condition(string scope, string text, Symbols? symbols = null, LoadLimits? limits = null)
    {
        symbols ??= ExampleSymbols.Plain;
        var bag = new MessageBag();
        var condition = new RuleLanguage(symbols, limits ?? LoadLimits.Default, bag).ReadCondition(Mapped(text), ScopeOf(symbols, scope));
        return new Reading(
            text, condition is null ? null : ConditionText.Canonical(condition), condition is null ? null : ConditionText.Words(condition),
            null, bag.Sorted());
    }

    /// <summary>There is a meaning and no error, or an error and no meaning, and every message lies within the text.</summary>
    public void AssertAnswered()
    {
        Assert.True(Canonical is null == Messages.Any(m => m.Severity == Severity.Error), $"{Text}\n{Said}");
        Assert.All(Messages, m => Assert.InRange(m.Location.Span.End, m.Location.Span.Start, Text.Length));
    }

    public static MappedText Mapped(string text) => MappedText.Verbatim(new SourceText("rule", text));

    public static Scope ScopeOf(Symbols symbols, string scope) =>
        scope == "study" ? Scope.Study : ExampleSymbols.Each(symbols, scope["each ".Length..]);

    /// <summary>The codes, each with the words underlined: what a failing test shows.</summary>
    public string Said => string.Join('\n', Messages.Select(m => $"{m.Code} [{m.Location.Words}] {m.Text} | {m.Label} | {m.Fix?.Replacement}"));
}
