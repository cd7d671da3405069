using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>Rules that may be other than false, in order of layer, read from the front.</summary>
internal sealed class CandidateList
{
    private Candidate[] _items = new Candidate[16];
    private int _next;
    private int _last = -1;

    public int Count { get; private set; }

    public ref readonly Candidate this[int index] => ref _items[index];

    public bool IsAtEnd => _next == Count;

    public ref readonly Candidate Next => ref _items[_next];

    public void Advance() => _next++;

    public void Clear() => (Count, _next, _last) = (0, 0, -1);

    public void Ask(int position) => Append(position, Truth.Unknown, mustAsk: true);

    /// <summary>One more clause of the rule is not false; the clauses of a rule follow each other.</summary>
    public void Add(int position, Truth truth, bool mustAsk)
    {
        if (_last == position) _items[Count - 1].Truth = Kleene.Or(_items[Count - 1].Truth, truth);
        else Append(position, truth, mustAsk);
    }

    private void Append(int position, Truth truth, bool mustAsk)
    {
        if (Count == _items.Length) Array.Resize(ref _items, 2 * Count);
        _items[Count++] = new Candidate { Position = position, Truth = truth, MustAsk = mustAsk };
        _last = position;
    }
}

internal struct Candidate
{
    public int Position;
    public Truth Truth;

    /// <summary>Its clauses do not say all; the condition itself decides.</summary>
    public bool MustAsk;
}
