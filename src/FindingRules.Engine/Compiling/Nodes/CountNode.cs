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
        foreach (var counted in Sites(examination, instance))
        {
            all++;
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
        var subject = examination[instance].Subject;
        foreach (var structure in Range.Structures)
        {
            if (!structure.IsPaired)
            {
                yield return examination.SiteOf(structure, Side.None);
            }
            else if (subject.Side == Side.None)
            {
                // From the study, and from a structure of the midline, no side is nearer than the other.
                yield return examination.SiteOf(structure, Side.Left);
                yield return examination.SiteOf(structure, Side.Right);
            }
            else
            {
                yield return subject.Side is Side.Left or Side.Right ? examination.SiteOf(structure, subject.Side) : -1;
            }
        }
    }
}
