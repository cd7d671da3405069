using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Testing.Generators;

/// <summary>Parts of a pack made without a file, for tests that are about meaning and not about text.</summary>
public static class ModelOf
{
    public static Location Nowhere { get; } = new SourceText("made in a test", "").Whole;

    public static Finding Choice(string name, string? normal, params ImmutableArray<string> values) =>
        new(name, new ChoiceType(values, normal), Nowhere);

    public static Finding Sign(string name, bool? normallyPresent = null) => new(name, new SignType(normallyPresent), Nowhere);

    public static Finding Measure(
        string name, Unit unit, Interval plausible, Rational precision = default, Interval? normal = null, bool isWhole = false) =>
        new(name, new MeasureType(unit, plausible, precision, normal, isWhole), Nowhere);

    public static Finding Extent(string name, Axis axis, bool normallyNone = false) =>
        new(name, new ExtentType(axis, normallyNone), Nowhere);

    public static Axis Axis(string name, params ImmutableArray<string> points) => new(name, points, Nowhere);

    public static Kind Kind(string name, Kind? like, params IEnumerable<Finding> findings) => new(
        name, like, ByName((like?.Findings.Values ?? []).Concat(findings), f => f.Name), Nowhere);

    public static Structure Structure(string name, Kind kind, bool isPaired) =>
        new(name, kind, name.Replace('-', ' '), "shoulder", isPaired, Nowhere);

    public static Scope Each(Vocabulary vocabulary, Kind kind) => new($"each {kind.Name}", kind, vocabulary.StructuresOf(kind));

    public static Scope Each(Structure structure) => new($"each {structure.Name}", structure.Kind, [structure]);

    public static Topic Topic(string name, Scope scope, bool isPerStructure, params IEnumerable<string> values) =>
        new(name, scope, Nowhere)
        {
            IsPerStructure = isPerStructure,
            Values = [.. values.Select(v => new TopicValue(v, v, Says($"{name} {v}"), Certainty.Definite, null, Nowhere))],
        };

    public static Wording Says(string text) => new(text, [new WordingText(text)], Nowhere);

    public static Vocabulary Vocabulary(
        IEnumerable<Axis> axes, IEnumerable<Kind> kinds, IEnumerable<Structure> structures, IEnumerable<Finding> facts) => new(
        ByName(axes, a => a.Name), ByName(kinds, k => k.Name), ByName(structures, s => s.Name), ByName(facts, f => f.Name));

    public static ImmutableSortedDictionary<string, T> ByName<T>(IEnumerable<T> items, Func<T, string> name) =>
        items.ToImmutableSortedDictionary(name, i => i, StringComparer.Ordinal);

    public static Pack Pack(Symbols symbols, IEnumerable<Rule> rules) => new()
    {
        Name = "made",
        Title = "Pack made in a test",
        Version = "1.0.0",
        Language = 1,
        Department = "Invented department of tests",
        Symbols = symbols,
        Rules = [.. rules.OrderBy(r => r.Id, StringComparer.Ordinal)],
        Protocols = ByName<Protocol>([], p => p.Name),
        Files = [Nowhere.Source],
        MeaningDigest = new string('0', 64),
        TextDigest = new string('0', 64),
    };
}
