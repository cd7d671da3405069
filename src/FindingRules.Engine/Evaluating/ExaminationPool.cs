using System.Collections.Concurrent;
using FindingRules.Engine.Compiling;

namespace FindingRules.Engine.Evaluating;

/// <summary>Examinations at rest. There are never more than evaluations ran at once.</summary>
internal sealed class ExaminationPool(RuleNetwork network)
{
    private readonly ConcurrentBag<Examination> _more = [];
    private Examination? _first;

    public Examination Take() =>
        Interlocked.Exchange(ref _first, null) ?? (_more.TryTake(out var free) ? free : new Examination(network));

    /// <summary>Nobody may look at it any longer.</summary>
    public void Return(Examination examination)
    {
        examination.Clear();
        if (Interlocked.CompareExchange(ref _first, examination, null) is not null) _more.Add(examination);
    }
}
