using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Compiling.Nodes;

/// <summary>
/// A statement about one or more places. Of a structure with several lesions it is true if true of one, so it is tried
/// for every choice of instances.
/// </summary>
/// <param name="places">Every place it speaks of, <see cref="Place.Own"/> first where it is among them.</param>
internal abstract class StatementNode(int id, bool usesPrecision, ImmutableArray<Place> places) : Node(id, usesPrecision)
{
    // By place: the place of this study whose lesion it takes.
    private readonly ImmutableArray<int> _now = [.. places.Select(p => p.FollowsLesion ? places.IndexOf(OfNow(p)) : 0)];

    public ImmutableArray<Place> Places { get; } = places;

    /// <summary>Truth for one choice: an instance for each place, -1 where there is none to speak of.</summary>
    public abstract Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened);

    protected override Truth Work(Examination examination, int instance, bool isWidened)
    {
        Span<int> chosen = stackalloc int[Places.Length];
        return Choose(examination, instance, isWidened, chosen, 0);
    }

    /// <summary>The choices, each as the instances it takes, in the order in which they are tried.</summary>
    public IEnumerable<int[]> Choices(Examination examination, int instance)
    {
        IEnumerable<int[]> choices = [[]];
        for (var next = 0; next < Places.Length; next++)
        {
            var place = next;
            choices = choices.SelectMany(c =>
                InstancesAt(examination, instance, place, c) is { Count: > 0 } run
                    ? Enumerable.Range(run.Start, run.Count).Select(i => (int[])[.. c, i])
                    : [[.. c, -1]]);
        }
        return choices;
    }

    /// <summary>Some measure it uses was sent as a bound, so that it may be unknown with everything sent.</summary>
    public virtual bool UsesBound(Examination examination, int instance) => false;

    private Truth Choose(Examination examination, int instance, bool isWidened, Span<int> chosen, int next)
    {
        if (next == Places.Length) return Test(examination, chosen, isWidened);
        var (start, count) = InstancesAt(examination, instance, next, chosen[..next]);
        if (count == 0)
        {
            chosen[next] = -1;
            return Choose(examination, instance, isWidened, chosen, next + 1);
        }
        var truth = Truth.False;
        for (var i = start; i < start + count && truth != Truth.True; i++)
        {
            chosen[next] = i;
            truth = Kleene.Or(truth, Choose(examination, instance, isWidened, chosen, next + 1));
        }
        return truth;
    }

    /// <summary>One statement takes all it says of a structure from one of its lesions, by whatever name it calls it.</summary>
    private (int Start, int Count) InstancesAt(Examination examination, int instance, int place, ReadOnlySpan<int> before)
    {
        var run = examination.Resolve(Places[place], instance, NowOf(place, before));
        if (run.Count < 2) return run;
        for (var i = 0; i < before.Length; i++)
            if (examination.Resolve(Places[i], instance, NowOf(i, before[..i])) == run)
                return (before[i], 1);
        return run;
    }

    /// <summary>The place without the look back, of which a place that follows a lesion takes the lesion.</summary>
    public static Place OfNow(Place following) => following with { IsEarlier = false, FollowsLesion = false };

    /// <summary>The instance of this study whose earlier self the place speaks of; -1 where there is none.</summary>
    private int NowOf(int place, ReadOnlySpan<int> before)
    {
        var now = _now[place];
        return now < before.Length ? before[now] : -1;
    }
}
