using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Text;

namespace FindingRules.Language.Binding;

/// <summary>A term of a chain with the lone words behind <c>or</c> that turned out to be further values of its finding.</summary>
internal sealed class ChainPart(TermSyntax term, ConnectorSyntax? before)
{
    public TermSyntax Term { get; } = term;

    public ConnectorSyntax? Before { get; } = before;

    /// <summary>The meaning, where it is not a list of values.</summary>
    public Condition? Condition { get; init; }

    public PhraseReading? Reading { get; init; }

    /// <summary>What further values are values of; also where the first value was misspelt.</summary>
    public Target? Target { get; init; }

    /// <summary>The not inside the statement: <c>is not wood</c>.</summary>
    public WordSyntax? InnerNot { get; init; }

    /// <summary>Where the finding's words end and the values begin.</summary>
    public TextSpan Path { get; init; }

    public List<WordSyntax> Values { get; init; } = [];

    public bool IsBroken { get; set; }

    public TextSpan Span => Values.Count == 0 ? Term.Span : Term.Span.Through(Values[^1].Span);
}
