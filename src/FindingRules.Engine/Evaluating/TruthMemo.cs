using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// What nodes were found to be at instances. Its size follows what a study asks, not the pack; forgetting costs nothing.
/// </summary>
internal sealed class TruthMemo
{
    private Entry[] _entries = new Entry[256];
    private int _count;
    private int _round = 1;

    private struct Entry
    {
        public int Round;
        public int Node;
        public int At;
        public Truth Truth;
    }

    public void Forget()
    {
        _count = 0;
        // After the last number the first would be taken for the present.
        if (++_round != int.MaxValue) return;
        Array.Clear(_entries);
        _round = 1;
    }

    public bool TryGet(int node, int instance, bool isWidened, out Truth truth)
    {
        ref var entry = ref Find(node, At(instance, isWidened));
        truth = entry.Truth;
        return entry.Round == _round;
    }

    public void Set(int node, int instance, bool isWidened, Truth truth)
    {
        if (2 * _count >= _entries.Length) Grow();
        ref var entry = ref Find(node, At(instance, isWidened));
        if (entry.Round != _round) _count++;
        entry = new Entry { Round = _round, Node = node, At = At(instance, isWidened), Truth = truth };
    }

    private static int At(int instance, bool isWidened) => (instance << 1) | (isWidened ? 1 : 0);

    private ref Entry Find(int node, int at)
    {
        var mask = _entries.Length - 1;
        var place = (int)((((uint)node * 0x9E3779B1) ^ ((uint)at * 0x85EBCA6B)) >> 7) & mask;
        while (_entries[place] is var entry && entry.Round == _round && (entry.Node != node || entry.At != at)) place = (place + 1) & mask;
        return ref _entries[place];
    }

    private void Grow()
    {
        var old = _entries;
        _entries = new Entry[2 * old.Length];
        foreach (var entry in old)
            if (entry.Round == _round)
                Find(entry.Node, entry.At) = entry;
    }
}
