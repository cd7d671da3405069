
namespace FindingRules.Engine.Evaluating;

/// <summary>
/// What the rules would be with every measure widened by its precision. Looks again only where a widened measure reaches
/// into other cells than the measure itself. Run after everything was decided: topics stay as they are.
/// </summary>
internal static class WidenedDecision
{
    public static void Run(Examination examination)
    {
        var present = examination.Count;
        for (var i = 0; i < present; i++)
            if (examination[i].IsPresent)
                Run(examination, i);
    }

    private static void Run(Examination examination, int index)
    {
        var instance = examination[index];
        if (instance.LesionCount == 0 && PlaneReader.TryLocateWidened(examination, instance, out var cells)
            && !cells.SequenceEqual(instance.Cells))
        {
            instance.Candidates.Clear();
            PlaneReader.Read(examination, instance, cells, instance.Settle(isWidened: true));
        }
        for (var i = 0; i < instance.Candidates.Count; i++)
        {
            ref readonly var candidate = ref instance.Candidates[i];
            if (!candidate.MustAsk) instance.WriteWidened(candidate.Position, candidate.Truth);
            else if (instance.Plan.Rules[candidate.Position].Condition.UsesPrecision) Ask(examination, index, candidate.Position);
        }
    }

    private static void Ask(Examination examination, int index, int position)
    {
        var entry = examination[index].Plan.Rules[position];
        var widened = LayeredDecision.Ask(examination, index, entry, isWidened: true);
        examination[index].WriteWidened(position, widened);
    }
}
