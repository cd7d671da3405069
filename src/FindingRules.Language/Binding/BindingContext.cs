using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>What words are resolved against, and where what is wrong with them goes.</summary>
/// <param name="Symbols">Everything that can be named.</param>
/// <param name="Scope">Whose own findings are meant: the rule's, or within a quantifier the counted structures'.</param>
/// <param name="Text">The rule.</param>
/// <param name="Messages">Receives the messages.</param>
internal sealed record BindingContext(Symbols Symbols, Scope Scope, MappedText Text, MessageBag Messages)
{
    /// <summary>The statement being bound, for a fix that rewords the whole of it.</summary>
    public TextSpan Statement { get; init; }

    /// <summary>How many counts (any, every, no, at least) stand around what is being bound.</summary>
    public int Counts { get; init; }

    public Vocabulary Vocabulary => Symbols.Vocabulary;

    /// <summary>Each subject of the rule is on a side, so that another structure can be on the same or the other one.</summary>
    public bool HasSide => !Scope.IsStudy && Scope.Structures.All(s => s.IsPaired);

    /// <summary>How messages name the subject of the rule: its kind, or the study.</summary>
    public string Owner => Scope.Kind is null ? "study" : OnlyStructure?.Name ?? Scope.Kind.Name;

    public Structure? OnlyStructure => Scope.Structures is [var only] ? only : null;

    public Location At(TextSpan span) => Text.At(span);

    public void Report(Message message) => Messages.Add(message);

    /// <summary>The author's words on one line.</summary>
    public string Written(TextSpan span) => string.Join(
        ' ', Text.Text.Substring(span.Start, span.Length).Split((char[])[' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
