using System.Collections.Immutable;
using FindingRules.Language.Syntax;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>What the words around a phrase demand of its meaning, and what to say where the meaning does not fit.</summary>
internal abstract class Form
{
    public virtual ImmutableArray<WordSyntax> Given => [];

    public bool Fits(PhraseReading reading) =>
        !(reading.Target is TopicTarget && reading.Place.IsEarlier) && FitsHere(reading);

    public Message Explain(BindingContext context, PhraseSyntax phrase, PhraseReading reading)
    {
        if (reading.Target is null) return Alone(context, phrase, reading);
        return reading.Target is TopicTarget && reading.Place.IsEarlier
            ? PlaceNameMessages.EarlierTopic(context.At(phrase.Span), reading.Target.Name)
            : ExplainHere(context, phrase, reading, reading.Target);
    }

    protected abstract bool FitsHere(PhraseReading reading);

    protected abstract Message ExplainHere(BindingContext context, PhraseSyntax phrase, PhraseReading reading, Target target);

    protected static Message TooMany(BindingContext context, PhraseReading reading, Target target)
    {
        var words = reading.Values[0].Span.Through(reading.Values[^1].Span);
        return NameMessages.WordTooMany(context.At(words), context.Written(words), target.Name);
    }

    private static Message Alone(BindingContext context, PhraseSyntax phrase, PhraseReading reading)
    {
        if (phrase.Words.IsEmpty) return TypeNameMessages.NotAssessed(context.At(phrase.Span), "study", "not a structure");
        var structure = phrase.Words[0].Text;
        if (!reading.Values.IsEmpty)
        {
            var words = reading.Values[0].Span.Through(reading.Values[^1].Span);
            var names = ScopeNames.All(context.Symbols, reading.At.Scope).SelectMany(t => t.Values).Distinct().ToArray();
            return NameMessages.UnknownValue(context.At(words), structure, context.Written(words), names);
        }
        var first = reading.At.Scope.Kind?.Findings.Keys.FirstOrDefault() ?? "thickness";
        return NameMessages.StructureAlone(context.At(phrase.Span), structure, context.Written(phrase.Span), first);
    }
}

/// <summary>A statement by itself: a sign, or a choice or topic with its value.</summary>
internal sealed class SaysForm(ImmutableArray<WordSyntax> given) : Form
{
    public override ImmutableArray<WordSyntax> Given => given;

    protected override bool FitsHere(PhraseReading reading) => reading switch
    {
        { Target: FindingTarget { Finding.Type: SignType }, Values: [] } => true,
        { Target: { } target, Values: [var value] } => target.Values.Contains(value.Text),
        _ => false,
    };

    protected override Message ExplainHere(BindingContext context, PhraseSyntax phrase, PhraseReading reading, Target target)
    {
        if (reading.Values.IsEmpty)
        {
            return TypeNameMessages.SaysNothingAlone(context.At(phrase.Span), target.Name, target.Type, target.CanSay);
        }
        var words = reading.Values[0].Span.Through(reading.Values[^1].Span);
        var written = context.Written(words);
        if (target.Values.IsEmpty) return HasNoValues(context, phrase, target, written);
        return reading.Values.Length > 1
            ? NameMessages.TooManyWords(context.At(words), written, target.Name, "`and` or `or`")
            : NameMessages.UnknownValue(context.At(words), target.Name, written, target.Values);
    }

    private static Message HasNoValues(BindingContext context, PhraseSyntax phrase, Target target, string written)
    {
        var replacement = ((target as FindingTarget)?.Finding.Type, written) switch
        {
            (SignType, "present") => target.Name,
            (SignType, "absent") => $"no {target.Name}",
            (ExtentType extent, _) when extent.Axis.IndexOf(written) >= 0 => $"{target.Name} reaches {written}",
            _ => null,
        };
        var place = replacement is null ? context.At(phrase.Span) : context.At(context.Statement);
        return TypeNameMessages.HasNoValues(place, target.Name, target.Type, written, target.CanSay, replacement);
    }
}

/// <summary>Behind <c>no</c>: a sign.</summary>
internal sealed class NoForm : Form
{
    protected override bool FitsHere(PhraseReading reading) =>
        reading is { Target: FindingTarget { Finding.Type: SignType }, Values: [] };

    protected override Message ExplainHere(BindingContext context, PhraseSyntax phrase, PhraseReading reading, Target target)
    {
        if (target is FindingTarget { Finding.Type: SignType }) return TooMany(context, reading, target);
        if (target is FindingTarget { Finding.Type: ExtentType extent })
        {
            var whole = $"not {target.Name} within {extent.Axis.Points[0]} to {extent.Axis.Points[^1]}";
            return TypeNameMessages.NotASign(
                context.At(context.Statement), target.Name, target.Type, $"write `{whole}`", reading.Values.IsEmpty ? whole : null);
        }
        var canSay = reading.Values.IsEmpty ? target.CanSay : $"write `not {context.Written(phrase.Span)}`";
        return TypeNameMessages.NotASign(context.At(context.Statement), target.Name, target.Type, canSay, null);
    }
}

/// <summary>Beside a comparison or in a calculation: a measure.</summary>
internal sealed class MeasureForm : Form
{
    protected override bool FitsHere(PhraseReading reading) =>
        reading is { Target: FindingTarget { Finding.Type: MeasureType } or DerivedTarget, Values: [] };

    protected override Message ExplainHere(BindingContext context, PhraseSyntax phrase, PhraseReading reading, Target target) =>
        reading.Values.IsEmpty || target is FindingTarget { Finding.Type: not MeasureType } or TopicTarget
            ? TypeNameMessages.NotAMeasure(context.At(phrase.Span), target.Name, target.Type, target.CanSay)
            : TooMany(context, reading, target);
}

/// <summary>Before <c>spans</c>, <c>reaches</c> or <c>within</c>: an extent.</summary>
internal sealed class ExtentForm(string relation) : Form
{
    protected override bool FitsHere(PhraseReading reading) =>
        reading is { Target: FindingTarget { Finding.Type: ExtentType }, Values: [] };

    protected override Message ExplainHere(BindingContext context, PhraseSyntax phrase, PhraseReading reading, Target target) =>
        target is FindingTarget { Finding.Type: ExtentType }
            ? TooMany(context, reading, target)
            : TypeNameMessages.NotAnExtent(context.At(phrase.Span), target.Name, target.Type, relation, target.CanSay);
}

/// <summary>Before <c>assessed</c>: a finding or a structure.</summary>
internal sealed class AssessedForm : Form
{
    protected override bool FitsHere(PhraseReading reading) =>
        reading is { Target: FindingTarget, Values: [] }
            or { Target: null, Values: [], Place.Relation: not Model.Conditions.PlaceRelation.Study };

    protected override Message ExplainHere(BindingContext context, PhraseSyntax phrase, PhraseReading reading, Target target) =>
        target is FindingTarget
            ? TooMany(context, reading, target)
            : TypeNameMessages.NotAssessed(context.At(phrase.Span), target.Name, target.Type);
}

/// <summary>Before <c>not assessable</c>: a finding.</summary>
internal sealed class NotAssessableForm : Form
{
    protected override bool FitsHere(PhraseReading reading) => reading is { Target: FindingTarget, Values: [] };

    protected override Message ExplainHere(BindingContext context, PhraseSyntax phrase, PhraseReading reading, Target target) =>
        target is FindingTarget
            ? TooMany(context, reading, target)
            : TypeNameMessages.NotAssessed(context.At(phrase.Span), target.Name, target.Type);
}
