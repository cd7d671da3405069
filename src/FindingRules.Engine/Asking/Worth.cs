using System.Collections.Immutable;
using FindingRules.Model.Quantities;

namespace FindingRules.Engine.Asking;

/// <summary>
/// How much of what is open the answers to a question settle, for each sort of consequence: the sum over the open
/// consequences of the share of answers that settle it. Compared sort by sort, the weightiest first.
/// </summary>
/// <param name="Settled">By sort: pairs of an answer and an open consequence that it settles.</param>
internal sealed record Worth(ImmutableArray<int> Settled, int Answers) : IComparable<Worth>
{
    public Rational Of(Weight weight) => Answers == 0 ? Rational.Zero : new Rational(Settled[(int)weight], Answers);

    public int CompareTo(Worth? other)
    {
        if (other is null) return 1;
        for (var i = 0; i < Weights.Count; i++)
        {
            var (here, there) = ((long)Settled[i] * Math.Max(1, other.Answers), (long)other.Settled[i] * Math.Max(1, Answers));
            if (here != there) return here.CompareTo(there);
        }
        return 0;
    }
}
