using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Packs;

/// <summary>A question that the pack answers at most once per subject.</summary>
public sealed class Topic(string name, Scope scope, Location declaredAt)
{
    /// <summary>The values of a topic are kept as the bits of one word.</summary>
    public const int MostValues = 64;

    public string Name { get; } = name;

    public Scope Scope { get; } = scope;

    public Location DeclaredAt { get; } = declaredAt;

    public string Title { get; init; } = name.Replace('-', ' ');

    /// <summary>One answer for the structure, however many lesions it has; otherwise one for each lesion.</summary>
    public bool IsPerStructure { get; init; }

    /// <summary>The pack claims that every assessed combination of findings gets a value.</summary>
    public bool AnswersEvery { get; init; }

    public ImmutableArray<TopicValue> Values { get; init; } = [];

    public TopicValue? Find(string value) => Values.FirstOrDefault(v => v.Name == value);

    public override string ToString() => Name;
}

/// <summary>One value of a topic. Without wording it serves other rules only and no impression comes of it.</summary>
public sealed record TopicValue(string Name, string Title, Wording? Says, Certainty Certainty, Code? Code, Location DeclaredAt);

public enum Certainty
{
    Definite,
    Probable,
    Possible,
}

/// <summary>A code of some terminology, carried and never interpreted.</summary>
public sealed record Code(string System, string Value, string? Version);

/// <summary>A measure worked out from others, of each subject in its scope.</summary>
public sealed record DerivedMeasure(string Name, string Title, Scope Scope, Unit Unit, QuantityExpression Is, Location DeclaredAt)
{
    /// <summary>How finely a person is shown it, such as to 0.1 mm; rules compare the exact value.</summary>
    public Quantity? ShownTo { get; init; }

    /// <summary>The text for a person of a value in base units; "about" is put before what had to be rounded.</summary>
    public string Show(Rational inBase)
    {
        if (ShownTo is not { InBase: var step }) return Quantity.FromBase(inBase, Unit).ToString();
        var shown = (inBase / step).Rounded(0) * step;
        var text = Quantity.FromBase(shown, Unit).ToString();
        return shown == inBase ? text : $"about {text}";
    }

    public bool Equals(DerivedMeasure? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);
}

/// <summary>
/// A published grading table. Each band is also a rule of the pack (<c>tear-size.medium</c>) and a value of the topic
/// that has the scale's name.
/// </summary>
public sealed record Scale(
    string Name, string Title, Topic Topic, QuantityExpression Of, Condition? When, ImmutableArray<Band> Bands,
    ImmutableArray<Reference> Sources, string? Choice, Location DeclaredAt);

/// <summary>The stretch of the measure that has one grade, in base units.</summary>
public sealed record Band(string Value, Interval Range, Location DeclaredAt);
