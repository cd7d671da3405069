using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

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
    public RuleMeaning? ReadRule(MappedText text, Scope scope) => throw new NotImplementedException();

    /// <summary>A condition alone, as in a scale's <c>when</c> or a step's <c>done</c>.</summary>
    public Condition? ReadCondition(MappedText text, Scope scope) => throw new NotImplementedException();

    /// <summary>An arithmetic expression, as in a derived measure: <c>defect-depth / thickness</c>.</summary>
    public QuantityExpression? ReadExpression(MappedText text, Scope scope) => throw new NotImplementedException();

    /// <summary>
    /// A stretch of quantities in base units: <c>0.5 mm to 30 mm</c> (both ends included), <c>from 1 cm to below 3 cm</c>,
    /// <c>from 3 cm to 5 cm</c>, <c>below 1 cm</c>, <c>at most 1 cm</c>, <c>above 5 cm</c>, <c>at least 5 cm</c>,
    /// <c>above 1 cm to 3 cm</c>.
    /// </summary>
    public Interval? ReadRange(MappedText text, Unit unit) => throw new NotImplementedException();

    /// <summary>One quantity of the unit's dimension: <c>0.5 mm</c>.</summary>
    public Quantity? ReadQuantity(MappedText text, Unit unit) => throw new NotImplementedException();

    /// <summary>A scope as written after <c>for:</c>: <c>study</c>, <c>each cuff-tendon</c>, <c>each biceps</c>.</summary>
    public Scope? ReadScope(MappedText text) => throw new NotImplementedException();
}

public sealed record RuleMeaning(Condition Condition, ImmutableArray<Conclusion> Conclusions);
