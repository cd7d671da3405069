using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>
/// Sets of findings of each of which every way to make a rule stand changes one. A part that is needed and not true stays so
/// as long as nothing changes that it depends on, and so does a rule that goes before it.
/// </summary>
internal sealed class Musts(Examination examination, IReadOnlySet<(bool IsEarlier, Subject Whole)> normals)
{
    private readonly ImmutableArray<ImmutableHashSet<FindingSlot>>.Builder _sets =
        ImmutableArray.CreateBuilder<ImmutableHashSet<FindingSlot>>();

    public static ImmutableArray<ImmutableHashSet<FindingSlot>> Of(RuleAt rule, IReadOnlySet<(bool, Subject)> normals)
    {
        var musts = new Musts(rule.Examination, normals);
        musts.AddParts(rule.Rule.Condition, rule.Entry.Condition, rule.Index);
        foreach (var superior in rule.Entry.Superiors.Select(p => rule with { Position = p }))
            if (superior.State is { IsDecided: true, Truth: not Truth.False })
                musts.AddWhole(superior.Rule.Condition, superior.Entry.Condition, superior.Index);
        return musts._sets.ToImmutable();
    }

    private void AddParts(Condition condition, Node node, int instance)
    {
        if (node.Decide(examination, instance, isWidened: false) == Truth.True) return;
        if ((condition, node) is not (AllOf all, AllNode nodes))
        {
            AddWhole(condition, node, instance);
            return;
        }
        for (var i = 0; i < nodes.Parts.Length; i++) AddParts(all.Parts[i], nodes.Parts[i], instance);
    }

    private void AddWhole(Condition condition, Node node, int instance)
    {
        var reach = new Reach(examination);
        reach.Add(condition, node, instance);
        if (reach.IsWhole && !reach.Tests.Any(t => IsMovedByOthers(t.Key, t.Value))) _sets.Add([.. reach.Tests.Keys]);
    }

    /// <summary>
    /// Another finding of the subject can bring filled normals back, and whether something was assessed has laws of its own.
    /// </summary>
    private bool IsMovedByOthers(FindingSlot slot, List<SlotTest> tests) =>
        normals.Contains((slot.IsEarlier, slot.Subject.Whole)) || tests.Exists(t => t is IsKnown);
}
