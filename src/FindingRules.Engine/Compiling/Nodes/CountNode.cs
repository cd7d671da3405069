using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling.Nodes;

/// <summary>Counts the structures of a scope for which a condition holds, examined or not.</summary>
internal sealed class CountNode(int id, Quantifier quantifier, int count, Scope range, Node where) : Node(id, where.UsesPrecision)
{
    public Node Where { get; } = where;

    public Scope Range { get; } = range;

    protected override Truth Work(Examination examination, int instance, bool isWidened)
    {
        var (all, yes, open) = (0, 0, 0);
        var side = examination[instance].Side;
        foreach (var structure in Range.Structures)
            for (var i = 0; i < SiteCount(structure, side); i++)
            {
                all++;
                var counted = Site(examination, structure, side, i);
                var truth = counted < 0 ? Truth.Unknown : Where.Decide(examination, counted, isWidened);
                if (truth == Truth.True) yes++;
                else if (truth == Truth.Unknown) open++;
            }
        return quantifier switch
        {
            Quantifier.Any => Kleene.AtLeast(1, yes, open),
            Quantifier.Every => Kleene.AtLeast(all, yes, open),
            Quantifier.No => Kleene.Not(Kleene.AtLeast(1, yes, open)),
            _ => Kleene.AtLeast(count, yes, open),
        };
    }

    /// <summary>The whole-structure instances in range; -1 for one whose side is not known.</summary>
    public IEnumerable<int> Sites(Examination examination, int instance)
    {
        var side = examination[instance].Side;
        foreach (var structure in Range.Structures)
            for (var i = 0; i < SiteCount(structure, side); i++)
                yield return Site(examination, structure, side, i);
    }

    // From the study, and from a structure of the midline, no side is nearer than the other.
    private static int SiteCount(Structure structure, Side side) => structure.IsPaired && side == Side.None ? 2 : 1;

    private static int Site(Examination examination, Structure structure, Side side, int index) => (structure.IsPaired, side) switch
    {
        (false, _) => examination.SiteOf(structure, Side.None),
        (_, Side.None) => examination.SiteOf(structure, index == 0 ? Side.Left : Side.Right),
        (_, Side.Left or Side.Right) => examination.SiteOf(structure, side),
        _ => -1,
    };
}
