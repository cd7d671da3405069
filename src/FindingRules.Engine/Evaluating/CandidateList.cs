using System.Runtime.CompilerServices;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>Rules that may be other than false, in order of layer, read from the front.</summary>
internal sealed class CandidateList
{
    private Candidate[] _items = new Candidate[16];
    private int _next;

    public int Count { get; private set; }

    public ref readonly Candidate this[int index] => ref _items[index];

    public bool IsAtEnd => _next == Count;

    public ref readonly Candidate Next => ref _items[_next];

    public void Advance() => _next++;

    public void Clear() => (Count, _next) = (0, 0);

    public void Ask(int position) => Add(new Candidate(position, Truth.Unknown, MustAsk: true));

    /// <summary>One more clause of the rule is not false; the clauses of a rule follow each other.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(int position, Truth truth, bool mustAsk)
    {
        if (Count > 0 && _items[Count - 1] is var last && last.Position == position)
            _items[Count - 1] = last with { Truth = Kleene.Or(last.Truth, truth) };
        else
            Add(new Candidate(position, truth, mustAsk));
    }

    private void Add(Candidate candidate)
    {
        if (Count == _items.Length) Array.Resize(ref _items, 2 * Count);
        _items[Count++] = candidate;
    }
}

/// <param name="MustAsk">Its clauses do not say all; the condition itself decides.</param>
internal readonly record struct Candidate(int Position, Truth Truth, bool MustAsk);
