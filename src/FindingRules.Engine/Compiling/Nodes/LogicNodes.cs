using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Compiling.Nodes;

internal sealed class AllNode(int id, ImmutableArray<Node> parts) : Node(id, parts.Any(p => p.UsesPrecision))
{
    public ImmutableArray<Node> Parts { get; } = parts;

    protected override Truth Work(Examination examination, int instance, bool isWidened)
    {
        var truth = Truth.True;
        foreach (var part in Parts)
        {
            truth = Kleene.And(truth, part.Decide(examination, instance, isWidened));
            if (truth == Truth.False) break;
        }
        return truth;
    }
}

internal sealed class AnyNode(int id, ImmutableArray<Node> parts) : Node(id, parts.Any(p => p.UsesPrecision))
{
    public ImmutableArray<Node> Parts { get; } = parts;

    protected override Truth Work(Examination examination, int instance, bool isWidened)
    {
        var truth = Truth.False;
        foreach (var part in Parts)
        {
            truth = Kleene.Or(truth, part.Decide(examination, instance, isWidened));
            if (truth == Truth.True) break;
        }
        return truth;
    }
}

internal sealed class NotNode(int id, Node part) : Node(id, part.UsesPrecision)
{
    public Node Part { get; } = part;

    protected override Truth Work(Examination examination, int instance, bool isWidened) =>
        Kleene.Not(Part.Decide(examination, instance, isWidened));
}
