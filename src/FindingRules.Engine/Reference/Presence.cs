using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reference;

/// <summary>What a study speaks of: the structures sent, and those that its protocols require.</summary>
internal sealed record Presence(IReadOnlyList<Subject> Structures, IReadOnlyList<Subject> Lesions)
{
    public static Presence Of(Study study)
    {
        var sent = study.Subjects.Select(s => new Subject(s.Structure, s.Side, null));
        var required = study.Protocols.SelectMany(use => use.Protocol.Required, (use, item) => Required(use.Side, item.Structure));
        var lesions = study.Subjects.SelectMany(s => s.Lesions, (s, lesion) => new Subject(s.Structure, s.Side, lesion.Id));
        return new Presence([.. sent.Concat(required).Distinct().Order()], [.. lesions.Order()]);
    }

    public bool Has(Subject subject) => subject.Structure is null || Structures.Contains(subject.Whole);

    /// <summary>The subjects that a rule or a topic of the scope is bound to, in order.</summary>
    public IEnumerable<Subject> SubjectsOf(Scope scope, bool isPerStructure)
    {
        if (scope.IsStudy) return [Subject.Study];
        var structures = Structures.Where(s => scope.Covers(s.Structure));
        return isPerStructure ? structures : structures.SelectMany(InstancesOf);
    }

    private IEnumerable<Subject> InstancesOf(Subject structure) =>
        Lesions.Where(l => l.Whole == structure).DefaultIfEmpty(structure);

    private static Subject Required(Side side, Structure structure) =>
        new(structure, !structure.IsPaired ? Side.None : side == Side.None ? Side.Unknown : side, null);
}
