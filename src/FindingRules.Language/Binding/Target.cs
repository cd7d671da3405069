using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>Something with a name that a statement can speak of.</summary>
internal abstract record Target(string Name)
{
    /// <summary>How messages name its type: "a choice".</summary>
    public abstract string Type { get; }

    /// <summary>The values it can be said to have; empty for what has none.</summary>
    public virtual ImmutableArray<string> Values => [];

    /// <summary>What the author can say of it.</summary>
    public abstract string CanSay { get; }

    protected static string OneOf(string name, IReadOnlyCollection<string> values) =>
        values.Count <= 6
            ? $"write `{name}` with one of {Spelling.List(values)}"
            : $"write `{name}` with a value, such as `{values.First()}`";

    protected static string Compare(string name, Unit unit) =>
        $"compare it: `{name} above …{(unit == Unit.Plain ? "" : $" {unit.Name}")}`";
}

internal sealed record FindingTarget(Finding Finding) : Target(Finding.Name)
{
    public override string Type => Finding.Type switch
    {
        ChoiceType => "a choice",
        SignType => "a sign",
        MeasureType => "a measure",
        _ => "an extent",
    };

    public override ImmutableArray<string> Values => Finding.Type is ChoiceType choice ? choice.Values : [];

    public override string CanSay => Finding.Type switch
    {
        ChoiceType choice => OneOf(Name, choice.Values),
        MeasureType measure => Compare(Name, measure.Unit),
        ExtentType { Axis.Points: [var first, .., var last] } =>
            $"write `{Name} reaches {first}` or `{Name} spans {first} to {last}`",
        _ => $"write `{Name}` or `no {Name}`",
    };
}

internal sealed record TopicTarget(Topic Topic) : Target(Topic.Name)
{
    public override string Type => "a topic";

    public override ImmutableArray<string> Values => [.. Topic.Values.Select(v => v.Name)];

    public override string CanSay => OneOf(Name, Values);
}

internal sealed record DerivedTarget(DerivedMeasure Measure) : Target(Measure.Name)
{
    public override string Type => "a derived measure";

    public override string CanSay => Compare(Name, Measure.Unit);
}
