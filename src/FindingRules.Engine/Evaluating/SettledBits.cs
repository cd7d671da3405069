using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// The rules of an instance that the planes alone decide, as bits: a clause that is not false, and one that is not sure.
/// Most are never asked for one by one, and so nothing is written of them until somebody does.
/// </summary>
internal sealed class SettledBits
{
    private Vector256<ulong>[] _possible = [];
    private Vector256<ulong>[] _unsure = [];
    private RulePlanes? _planes;

    /// <summary>It holds something that was not collected yet.</summary>
    public bool IsOwing { get; private set; }

    /// <summary>By clause: it is not false.</summary>
    public ReadOnlySpan<ulong> Possible => Words(_possible);

    /// <summary>By clause: it is unknown.</summary>
    public ReadOnlySpan<ulong> Unsure => Words(_unsure);

    public void Use(RulePlanes planes)
    {
        (_planes, IsOwing) = (planes, true);
        if (_possible.Length >= planes.Blocks.Length) return;
        (_possible, _unsure) = (new Vector256<ulong>[planes.Blocks.Length], new Vector256<ulong>[planes.Blocks.Length]);
    }

    public void Forget() => (_planes, IsOwing) = (null, false);

    public void Set(int block, Vector256<ulong> possible, Vector256<ulong> unsure)
    {
        _possible[block] = possible;
        _unsure[block] = unsure;
    }

    /// <summary>The rules that are not false.</summary>
    public void CollectLive(CandidateList live)
    {
        Begin(live);
        var possible = Possible;
        var unsure = Unsure;
        for (var i = 0; i < possible.Length; i++) Collect(_planes!, i, possible[i], unsure[i], live);
    }

    /// <summary>The rules that are not false and may be other than they were <paramref name="before"/>.</summary>
    public void CollectChanged(SettledBits before, CandidateList live)
    {
        // A value that contradicts itself is settled only when widened.
        if (before._planes is null)
        {
            CollectLive(live);
            return;
        }
        Begin(live);
        var possible = Possible;
        var unsure = Unsure;
        var possibleBefore = before.Possible;
        var unsureBefore = before.Unsure;
        for (var i = 0; i < possible.Length; i++)
        {
            // Of a rule with several clauses all count.
            var changed = (possible[i] ^ possibleBefore[i]) | (unsure[i] ^ unsureBefore[i]) | _planes!.OfSeveral[i];
            Collect(_planes, i, possible[i] & changed, unsure[i], live);
        }
    }

    /// <param name="word">Which 64 clauses.</param>
    public static void Collect(RulePlanes planes, int word, ulong possible, ulong unsure, CandidateList into)
    {
        for (; possible != 0; possible &= possible - 1)
        {
            var bit = BitOperations.TrailingZeroCount(possible);
            var position = planes.Clauses[(64 * word) + bit];
            var isSure = ((unsure >> bit) & 1) == 0;
            into.Add(position, isSure ? Truth.True : Truth.Unknown, mustAsk: !planes.IsExact[position]);
        }
    }

    private void Begin(CandidateList live)
    {
        IsOwing = false;
        live.Clear();
    }

    private ReadOnlySpan<ulong> Words(Vector256<ulong>[] blocks) =>
        _planes is null ? [] : MemoryMarshal.Cast<Vector256<ulong>, ulong>(blocks)[.._planes.WordCount];
}
