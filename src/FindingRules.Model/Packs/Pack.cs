using System.Collections.Immutable;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Packs;

/// <summary>A whole pack, checked: every word resolved, every reference found.</summary>
public sealed record Pack
{
    /// <summary>The longest a standing caution may be shortened to is this sentence itself: every answer carries it.</summary>
    public const string StandingNotice =
        "Support for a qualified reader, not a diagnosis. Local protocols and licensed practice decide.";

    public required string Name { get; init; }

    public required string Title { get; init; }

    public required string Version { get; init; }

    /// <summary>The version of the rule language.</summary>
    public required int Language { get; init; }

    public required string Department { get; init; }

    /// <summary>The standing notice of every answer, as the department words it; it holds <see cref="StandingNotice"/>.</summary>
    public string Caution { get; init; } = StandingNotice;

    /// <summary>Null while no clinician has approved this very meaning: then every answer says DEMONSTRATION.</summary>
    public Approval? Approval { get; init; }

    public ImmutableArray<Withdrawal> Withdrawn { get; init; } = [];

    /// <summary>For what reasons a suggestion may be overridden, by code, with what each says. They change no answer.</summary>
    public ImmutableSortedDictionary<string, string> Reasons { get; init; } =
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    public required Symbols Symbols { get; init; }

    /// <summary>Every rule in order of id, the bands of scales among them.</summary>
    public required ImmutableArray<Rule> Rules { get; init; }

    public required ImmutableSortedDictionary<string, Protocol> Protocols { get; init; }

    public ImmutableArray<Case> Cases { get; init; } = [];

    /// <summary>The manifest first, then the files in the order of the manifest.</summary>
    public required ImmutableArray<SourceText> Files { get; init; }

    /// <summary>SHA-256 of what may change an answer, lower-case hex.</summary>
    public required string MeaningDigest { get; init; }

    /// <summary>SHA-256 of the files' names and texts, lower-case hex.</summary>
    public required string TextDigest { get; init; }

    public Vocabulary Vocabulary => Symbols.Vocabulary;

    public ImmutableSortedDictionary<string, Reference> References => Symbols.References;

    /// <summary>Whether a rule takes part in readings.</summary>
    public bool IsInForce(Rule rule) => !Withdrawn.Any(w => w.Rule == rule.Id);
}

/// <summary>Who approved which meaning digest, and when.</summary>
public sealed record Approval(string By, DateOnly On, string Digest);

public sealed record Withdrawal(string Rule, DateOnly On, string Because);

/// <summary>Everything a rule may name, by name. Bound before the first rule is read.</summary>
public sealed record Symbols
{
    public required Vocabulary Vocabulary { get; init; }

    public ImmutableSortedDictionary<string, Topic> Topics { get; init; } = Empty<Topic>();

    public ImmutableSortedDictionary<string, NextStep> NextSteps { get; init; } = Empty<NextStep>();

    /// <summary>By the name of the structure to evaluate.</summary>
    public ImmutableSortedDictionary<string, EvaluateStep> EvaluateSteps { get; init; } = Empty<EvaluateStep>();

    public ImmutableSortedDictionary<string, Caution> Cautions { get; init; } = Empty<Caution>();

    public ImmutableSortedDictionary<string, DerivedMeasure> DerivedMeasures { get; init; } = Empty<DerivedMeasure>();

    public ImmutableSortedDictionary<string, Reference> References { get; init; } = Empty<Reference>();

    public ImmutableSortedDictionary<string, Scale> Scales { get; init; } = Empty<Scale>();

    private static ImmutableSortedDictionary<string, T> Empty<T>() =>
        ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);
}
