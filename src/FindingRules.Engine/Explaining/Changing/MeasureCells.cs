using System.Collections.Immutable;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>The plausible values of a measure, cut where some test turns.</summary>
internal static class MeasureCells
{
    public static ImmutableArray<Cell> Others(MeasureType type, ImmutableArray<SlotTest> tests, MeasuredValue? now, bool normal)
    {
        var compared = tests.OfType<IsCompared>().ToList();
        // What passes for normal, the measuring error allowed for.
        var range = type.Normal?.Widen(type.Precision);
        var edges = compared.SelectMany(t => t.Edges).Concat(normal && range is { } r ? Ends(r) : []);
        string Signature(Rational x) => string.Concat(compared.Select(t => (int)t.Holds(x)))
            + (normal && range is { } n ? n.Contains(x) ? "n" : "d" : "");
        var pieces = Merge(Pieces(type.Plausible, [.. edges.Where(type.Plausible.Contains).Distinct().Order()]), Signature);
        return
        [
            .. pieces.Where(p => now is not { } known || !p.Contains(known.Interval))
                .Select(p => (Piece: p, Value: Representative.Of(p, type, now)))
                .Where(p => p.Value is not null)
                .Select(p => Cell(p.Piece, p.Value!.Value, type, now)),
        ];
    }

    private static Cell Cell(Interval piece, Rational value, MeasureType type, MeasuredValue? now)
    {
        var unit = now?.Unit ?? type.Unit;
        var shown = Quantity.FromBase(value, unit);
        var measured = new MeasuredValue(Interval.Point(value), unit, IsBound: false, shown.ToString());
        return new Cell(measured, shown.ToString(), Words(piece, type, unit));
    }

    /// <summary>An end that is only the end of what is plausible need not be said.</summary>
    private static string Words(Interval piece, MeasureType type, Unit unit)
    {
        var low = piece.Low == type.Plausible.Low ? null : piece.Low;
        var high = piece.High == type.Plausible.High ? null : piece.High;
        if (piece.IsPoint) return $"exactly {Quantity.FromBase(piece.Low!.Value, unit)}";
        var said = new Interval(low, piece.LowClosed && low is not null, high, piece.HighClosed && high is not null);
        return Shown.Interval(said, unit) switch
        {
            var words when low is not null && high is not null && piece.LowClosed => $"from {words}",
            "any value" => "any plausible value",
            var words => words,
        };
    }

    private static IEnumerable<Rational> Ends(Interval range) => new[] { range.Low, range.High }.OfType<Rational>();

    /// <summary>The edges themselves and what lies between them.</summary>
    private static IEnumerable<Interval> Pieces(Interval whole, ImmutableArray<Rational> edges)
    {
        var (low, lowClosed) = (whole.Low, whole.LowClosed);
        foreach (var edge in edges)
        {
            var before = new Interval(low, lowClosed, edge, false);
            if (!before.IsEmpty) yield return before;
            yield return Interval.Point(edge);
            (low, lowClosed) = (edge, false);
        }
        var last = new Interval(low, lowClosed, whole.High, whole.HighClosed);
        if (!last.IsEmpty) yield return last;
    }

    private static List<Interval> Merge(IEnumerable<Interval> pieces, Func<Rational, string> signature)
    {
        var merged = new List<(Interval Piece, string Signature)>();
        foreach (var piece in pieces)
        {
            var found = signature(Inside(piece));
            if (merged.Count > 0 && merged[^1].Signature == found)
                merged[^1] = (new Interval(merged[^1].Piece.Low, merged[^1].Piece.LowClosed, piece.High, piece.HighClosed), found);
            else
                merged.Add((piece, found));
        }
        return [.. merged.Select(m => m.Piece)];
    }

    private static Rational Inside(Interval piece) => (piece.Low, piece.High) switch
    {
        ({ } low, { } high) => (low + high) / 2,
        ({ } low, null) => low + 1,
        (null, { } high) => high - 1,
        _ => Rational.Zero,
    };
}
