using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Packs.Digests;

namespace FindingRules.Packs.Binding.Scales;

/// <summary>The rule that each band of a scale is.</summary>
internal static class BandRules
{
    public static string IdOf(string scale, string band) => $"{scale}.{band}";

    /// <summary>The unit in which a stretch is written: its last word that is one.</summary>
    public static Unit? UnitOf(string range)
    {
        foreach (var word in range.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Reverse())
            if (Unit.Find(word.AsSpan().TrimStart("0123456789.")) is { } unit && !char.IsAsciiDigit(word[^1]))
                return unit;
        return null;
    }

    public static IEnumerable<Rule> Of(Scale scale, PendingScale pending)
    {
        for (var i = 0; i < scale.Bands.Length; i++)
        {
            var range = pending.Bands[i].Range;
            yield return Of(scale, scale.Bands[i], pending, range.Location, UnitOf(range.Value), Fields.OneLine(range.Value));
        }
    }

    private static Rule Of(Scale scale, Band band, PendingScale pending, Location at, Unit? unit, string range)
    {
        var within = Within(scale.Of, band.Range, unit ?? Unit.All.First(u => u.Dimension == scale.Of.Dimension), at);
        var condition = scale.When is { } when ? Join(when, within, at) : within;
        var when1 = pending.Fields.Words("when") is { } words ? $"({words}) and " : "";
        ImmutableArray<Conclusion> conclusions = [new TopicConclusion(scale.Topic, scale.Topic.Find(band.Value)!, at)];
        return new Rule(IdOf(scale.Name, band.Value), scale.Topic.Scope, condition, conclusions, band.DeclaredAt)
        {
            Text = $"{when1}{pending.Fields.Words("of")} {range} → {scale.Name} {band.Value}",
            Because = scale.Choice ?? $"Band of the scale {scale.Title}.",
            Sources = scale.Sources,
            Choice = scale.Choice,
            ScaleName = scale.Name,
            IsPerStructure = scale.Topic.IsPerStructure,
            Revision = RuleRevision.Of(IdOf(scale.Name, band.Value), scale.Topic.Scope, condition, conclusions, [],
                scale.Topic.IsPerStructure),
        };
    }

    private static AllOf Join(Condition when, Condition within, Location at) =>
        new([.. when is AllOf all ? all.Parts : [when], .. within is AllOf both ? both.Parts : [within]], at);

    private static Condition Within(QuantityExpression of, Interval range, Unit unit, Location at)
    {
        if (range is { Low: { } from, High: { } to, LowClosed: true, HighClosed: true })
            return new BetweenStatement(of, Constant(from, unit, at), Constant(to, unit, at), at);
        var parts = ImmutableArray.CreateBuilder<Condition>(2);
        if (range.Low is { } low)
            parts.Add(new ComparisonStatement(of, range.LowClosed ? Comparator.AtLeast : Comparator.Above,
                Constant(low, unit, at), at));
        if (range.High is { } high)
            parts.Add(new ComparisonStatement(of, range.HighClosed ? Comparator.AtMost : Comparator.Below,
                Constant(high, unit, at), at));
        return parts.Count == 1 ? parts[0] : new AllOf(parts.ToImmutable(), at);
    }

    private static ConstantExpression Constant(Rational inBase, Unit unit, Location at) => new(Quantity.FromBase(inBase, unit), at);
}
