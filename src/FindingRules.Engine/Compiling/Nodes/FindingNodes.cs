using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Compiling.Nodes;

internal sealed class ValueNode(int id, ImmutableArray<Place> places, int slot, ImmutableArray<string> values)
    : StatementNode(id, usesPrecision: false, places)
{
    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened)
    {
        if (examination.ValueAt(chosen[^1], slot) is not ChoiceValue choice) return Truth.Unknown;
        foreach (var value in values)
            if (value == choice.Value)
                return Truth.True;
        return Truth.False;
    }
}

internal sealed class SignNode(int id, ImmutableArray<Place> places, int slot) : StatementNode(id, usesPrecision: false, places)
{
    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened) =>
        examination.ValueAt(chosen[^1], slot) is SignValue sign ? Kleene.Of(sign.IsPresent) : Truth.Unknown;
}

internal sealed class ExtentNode(int id, ImmutableArray<Place> places, int slot, ExtentRelation relation, int from, int to)
    : StatementNode(id, usesPrecision: false, places)
{
    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened) =>
        examination.ValueAt(chosen[^1], slot) is ExtentValue extent ? Kleene.Of(Holds(extent, relation, from, to)) : Truth.Unknown;

    public static bool Holds(ExtentValue extent, ExtentRelation relation, int from, int to)
    {
        var isWithin = relation == ExtentRelation.Within;
        foreach (var stretch in extent.Stretches)
        {
            var fits = isWithin ? from <= stretch.From && stretch.To <= to : stretch.From <= from && to <= stretch.To;
            if (fits != isWithin) return fits;
        }
        return isWithin && !extent.Stretches.IsEmpty;
    }
}

/// <summary>Slot -1 asks whether anything of the structure was assessed.</summary>
internal sealed class AssessedNode(int id, ImmutableArray<Place> places, int slot) : StatementNode(id, usesPrecision: false, places)
{
    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened)
    {
        if (chosen[^1] < 0) return Truth.False;
        var values = examination[chosen[^1]].Values;
        if (slot >= 0) return Kleene.Of(IsKnown(values[slot]));
        foreach (var value in values)
            if (IsKnown(value))
                return Truth.True;
        return Truth.False;
    }

    private static bool IsKnown(FindingValue? value) => value is not (null or NotAssessableValue);
}

/// <summary>Whether somebody tried and could not tell.</summary>
internal sealed class NotAssessableNode(int id, ImmutableArray<Place> places, int slot)
    : StatementNode(id, usesPrecision: false, places)
{
    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened) =>
        Kleene.Of(chosen[^1] >= 0 && examination[chosen[^1]].Values[slot] is NotAssessableValue);
}

/// <param name="mask">A bit for each value of the topic that is named.</param>
internal sealed class TopicNode(int id, ImmutableArray<Place> places, int topic, ulong mask)
    : StatementNode(id, usesPrecision: false, places)
{
    public int Topic { get; } = topic;

    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened)
    {
        if (chosen[^1] < 0) return Truth.Unknown;
        return examination.TopicAt(chosen[^1], Topic) is { } state ? state.TruthOf(mask) : Truth.Unknown;
    }
}
