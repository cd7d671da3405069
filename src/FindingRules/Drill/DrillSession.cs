namespace FindingRules.Drill;

/// <summary>
/// One sitting: so many questions, what is due before what is new, and what was answered wrong once more after a few
/// others. Without progress everything is new, and the same seed asks the same.
/// </summary>
public sealed class DrillSession
{
    private const int Between = 3;

    private readonly DrillDeck _deck;
    private readonly ulong _seed;
    private readonly int _count;
    private readonly Queue<string> _order;
    private readonly Queue<(string Key, int From)> _missed = new();
    private readonly HashSet<string> _again = [];

    public DrillSession(DrillDeck deck, DrillProgress progress, ulong seed, int count)
    {
        (_deck, _seed, _count) = (deck, seed, count);
        Progress = progress.Begin();
        _order = new Queue<string>(deck.Order(seed).OrderBy(Progress.Turn).ThenBy(k => Progress.Questions.GetValueOrDefault(k)?.Box ?? 0));
    }

    /// <summary>To be kept after each answer.</summary>
    public DrillProgress Progress { get; private set; }

    public int Asked { get; private set; }

    /// <summary>Null at the end of the session.</summary>
    public DrillQuestion? Next()
    {
        if (Asked >= _count) return null;
        if (_missed.TryPeek(out var missed) && (Asked >= missed.From || _order.Count == 0))
        {
            _missed.Dequeue();
            Asked++;
            // Its options come in another order, so that the place is not what is remembered.
            return _deck.Question(missed.Key, _seed + 1);
        }
        while (_order.TryDequeue(out var key))
            if (_deck.Question(key, _seed) is { } question)
            {
                Asked++;
                return question;
            }
        return null;
    }

    public void Record(DrillQuestion question, DrillVerdict verdict)
    {
        Progress = Progress.With(question.Key, verdict);
        // Once more and not until it is right: the next session begins with it.
        if (verdict is DrillVerdict.Wrong or DrillVerdict.WrongReason && _again.Add(question.Key))
            _missed.Enqueue((question.Key, Asked + Between));
    }
}
