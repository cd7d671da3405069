using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>Evaluates changed studies with the engine itself, and counts them.</summary>
internal sealed class Trials(RuleNetwork network, Study study)
{
    public Study Study { get; } = study;

    public int Count { get; private set; }

    public T Ask<T>(Study changed, Func<Examination, T> ask)
    {
        Count++;
        return Evaluator.Use(network, changed, ask);
    }

    /// <summary>The instance of a subject; -1 where the study does not have it.</summary>
    public static int Find(Examination examination, Subject subject)
    {
        for (var i = 0; i < examination.Count; i++)
            if (examination[i].IsPresent && examination[i].Subject == subject)
                return i;
        return -1;
    }
}
