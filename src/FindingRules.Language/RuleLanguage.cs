using System.Collections.Immutable;
using FindingRules.Language.Binding;
using FindingRules.Language.Grammar;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;
using Sprache;

namespace FindingRules.Language;

/// <summary>
/// The rule language: text in, bound meaning out. Each method reads one text whole, adds at least one message where it
/// returns null, and never throws for what an author wrote.
/// </summary>
public sealed class RuleLanguage(Symbols symbols, LoadLimits limits, MessageBag messages)
{
    private readonly Symbols _symbols = symbols;
    private readonly LoadLimits _limits = limits;
    private readonly MessageBag _messages = messages;

    /// <summary>A whole rule: <c>biceps subluxed → evaluate subscapularis</c>.</summary>
    public RuleMeaning? ReadRule(MappedText text, Scope scope) => Read(RuleGrammar.Rule, text, rule =>
    {
        var context = Context(text, scope);
        var condition = new ConditionBinder(context).Bind(rule.Condition);
        var conclusions = new ConclusionBinder(context).Bind(rule.Conclusions);
        return condition is null || conclusions is null ? null : new RuleMeaning(condition, conclusions.Value);
    });

    /// <summary>A condition alone, as in a scale's <c>when</c> or a step's <c>done</c>.</summary>
    public Condition? ReadCondition(MappedText text, Scope scope) =>
        Read(RuleGrammar.Condition, text, condition => new ConditionBinder(Context(text, scope)).Bind(condition));

    /// <summary>An arithmetic expression, as in a derived measure: <c>defect-depth / thickness</c>.</summary>
    public QuantityExpression? ReadExpression(MappedText text, Scope scope) =>
        Read(RuleGrammar.Expression, text, expression => new QuantityBinder(Context(text, scope)).Bind(expression));

    /// <summary>
    /// A stretch of quantities in base units: <c>0.5 mm to 30 mm</c> (both ends included), <c>from 1 cm to below 3 cm</c>,
    /// <c>from 3 cm to 5 cm</c>, <c>below 1 cm</c>, <c>at most 1 cm</c>, <c>above 5 cm</c>, <c>at least 5 cm</c>,
    /// <c>above 1 cm to 3 cm</c>.
    /// </summary>
    public Interval? ReadRange(MappedText text, Unit unit)
    {
        var range = SyntaxReader.Read(RangeGrammar.Range, text, _limits, _messages);
        return range is null ? null : new RangeBinder(text, unit, _messages).Bind(range);
    }

    /// <summary>One quantity of the unit's dimension: <c>0.5 mm</c>.</summary>
    public Quantity? ReadQuantity(MappedText text, Unit unit)
    {
        var quantity = SyntaxReader.Read(RangeGrammar.Quantity, text, _limits, _messages);
        return quantity is null ? null : new RangeBinder(text, unit, _messages).Bind(quantity);
    }

    /// <summary>A scope as written after <c>for:</c>: <c>study</c>, <c>each cuff-tendon</c>, <c>each biceps</c>.</summary>
    public Scope? ReadScope(MappedText text)
    {
        var scope = SyntaxReader.Read(RuleGrammar.Scope, text, _limits, _messages);
        return scope is null ? null : new ScopeBinder(_symbols, text, _messages).Bind(scope);
    }

    private BindingContext Context(MappedText text, Scope scope) => new(_symbols, scope, text, _messages);

    private TMeaning? Read<TSyntax, TMeaning>(Parser<TSyntax> grammar, MappedText text, Func<TSyntax, TMeaning?> bind)
        where TSyntax : class
        where TMeaning : class
    {
        var syntax = SyntaxReader.Read(grammar, text, _limits, _messages);
        if (syntax is null) return null;
        try
        {
            return bind(syntax);
        }
        catch (InsufficientExecutionStackException)
        {
            // Only where the limits were raised beyond what the stack holds.
            _messages.Add(SyntaxMessages.TooDeep(text.Whole, _limits.RuleNesting));
            return null;
        }
    }
}

public sealed record RuleMeaning(Condition Condition, ImmutableArray<Conclusion> Conclusions);
