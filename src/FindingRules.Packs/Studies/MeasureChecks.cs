using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>What a quantity that was read must also be: of the right sort, plausible, and no finer than is needed.</summary>
internal static class MeasureChecks
{
    private const int MonthsInTwoYears = 24;

    /// <param name="at">The whole value.</param>
    /// <param name="text">The text alone, where one replacement would mend it.</param>
    public static MeasuredValue? Check(
        QuantityReading read, Location at, Location? text, Finding finding, MeasureType type, StudyContext context)
    {
        var problem = Dimensions(read, at, finding, type)
            ?? Fineness(read, at, finding, type)
            ?? Plausibility(read, at, text, finding, type);
        if (problem is not null)
        {
            context.Messages.Add(problem);
            return null;
        }
        var isBound = read.Comparator != QuantityComparator.None || read.Upper is not null;
        var interval = isBound ? read.Interval.Intersect(type.Plausible) : read.Interval;
        return new MeasuredValue(interval, read.Unit!, isBound, read.Shown);
    }

    public static Message Explain(QuantityReading read, ScalarNode word, Finding finding, MeasureType type) => read.Problem switch
    {
        QuantityProblem.NoUnit => StudyMessages.NoUnit(word.Location, finding.Name, Shown.Briefly(word.Value), type.Unit.Name),
        QuantityProblem.UnknownUnit => StudyMessages.UnknownUnit(
            word.Location, finding.Name, Shown.Briefly(read.UnknownUnit!), UnitNames(type.Unit.Dimension)),
        QuantityProblem.TooManyDigits => StudyMessages.TooManyDigits(word.Location, finding.Name, Rational.MostDigits),
        QuantityProblem.OutOfOrder => StudyMessages.BackwardRange(word.Location, finding.Name),
        _ => StudyMessages.NotAQuantity(word.Location, finding.Name, MeasureReader.Example(type)),
    };

    public static string[] UnitNames(Dimension dimension) =>
        [.. Unit.All.Where(u => u.Dimension == dimension && u != Unit.Plain).Select(u => u.Name)];

    private static Message? Dimensions(QuantityReading read, Location at, Finding finding, MeasureType type)
    {
        if (read.Unit!.Dimension == type.Unit.Dimension) return null;
        return StudyMessages.WrongDimension(
            at, finding.Name, read.Unit.Name, read.Unit.Dimension.Title, type.Unit.Dimension.Title,
            Spelling.List(UnitNames(type.Unit.Dimension)));
    }

    private static Message? Fineness(QuantityReading read, Location at, Finding finding, MeasureType type)
    {
        if (!type.IsWhole) return null;
        if (type.Unit.Dimension == Unit.Year.Dimension)
            return IsCoarseAge(read.First) && (read.Upper is not { } upper || IsCoarseAge(upper))
                ? null
                : StudyMessages.AgeTooFine(at, finding.Name);
        return IsWhole(read.First, type.Unit) && (read.Upper is not { } high || IsWhole(high, type.Unit))
            ? null
            : StudyMessages.NotWhole(at, finding.Name, type.Unit.Name);
    }

    private static bool IsCoarseAge(Quantity age) =>
        age.Number.Denominator.IsOne && (age.Unit != Unit.Month || age.Number < MonthsInTwoYears);

    private static bool IsWhole(Quantity quantity, Unit unit) => (quantity.InBase / unit.InBase).Denominator.IsOne;

    private static Message? Plausibility(QuantityReading read, Location at, Location? text, Finding finding, MeasureType type)
    {
        var isPlausible = read.Comparator == QuantityComparator.None
            ? type.Plausible.Contains(read.First.InBase) && (read.Upper is not { } upper || type.Plausible.Contains(upper.InBase))
            : !read.Interval.Intersect(type.Plausible).IsEmpty;
        if (isPlausible) return null;
        var slip = read.Comparator == QuantityComparator.None && read.Upper is null ? LikelySlip(read.First, type) : null;
        return StudyMessages.Implausible(text ?? at, finding.Name, read.Shown, Range(type), slip?.ToString(),
            isText: text is not null);
    }

    // The other unit for the same number first, then a decimal point that went astray.
    private static Quantity? LikelySlip(Quantity sent, MeasureType type)
    {
        foreach (var unit in Unit.All)
            if (unit != sent.Unit && unit.Dimension == sent.Unit.Dimension
                && type.Plausible.Contains(new Quantity(sent.Number, unit).InBase))
                return new Quantity(sent.Number, unit);
        foreach (var factor in (ReadOnlySpan<Rational>)[new Rational(1, 10), 10])
            if (type.Plausible.Contains(sent.InBase * factor))
                return new Quantity(sent.Number * factor, sent.Unit);
        return null;
    }

    private static string Range(MeasureType type)
    {
        var low = type.Plausible.Low is { } l ? Quantity.FromBase(l, type.Unit).ToString() : null;
        var high = type.Plausible.High is { } h ? Quantity.FromBase(h, type.Unit).ToString() : null;
        return low is null ? $"at most {high}" : high is null ? $"at least {low}" : $"{low} to {high}";
    }
}
