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
    // Most statements speak of one place, and most studies have few instances: -1 comes first.
    private static readonly int[][][] _singles = [.. Enumerable.Range(-1, 128).Select(i => (int[][])[[i]])];

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

    /// <summary>The choices, each as the instances it takes, in the order in which they are tried. Nobody may change them.</summary>
    public int[][] Choices(Examination examination, int instance)
    {
        if (Places.Length == 1 && InstancesAt(examination, instance, 0, []) is { Count: < 2 } only)
            return Single(only.Count == 0 ? -1 : only.Start);
        var choices = new List<int[]>();
        AddChoices(choices, examination, instance, new int[Places.Length], 0);
        return [.. choices];
    }

    private void AddChoices(List<int[]> choices, Examination examination, int instance, int[] chosen, int next)
    {
        if (next == Places.Length)
        {
            choices.Add([.. chosen]);
            return;
        }
        var (start, count) = InstancesAt(examination, instance, next, chosen.AsSpan(0, next));
        if (count == 0) (start, count) = (-1, 1);
        for (var i = start; i < start + count; i++)
        {
            chosen[next] = i;
            AddChoices(choices, examination, instance, chosen, next + 1);
        }
    }

    private static int[][] Single(int instance) => instance + 1 < _singles.Length ? _singles[instance + 1] : [[instance]];

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
