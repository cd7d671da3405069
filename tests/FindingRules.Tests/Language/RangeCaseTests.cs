using FindingRules.Language;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>Stretches of quantities: plausible ranges and the bands of scales.</summary>
public sealed class RangeCaseTests
{
    public static TheoryData<string> Rows => [.. CaseFile.Rows("ranges.cases")];

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_stretch_is_this(string row)
    {
        var given = CaseFile.Read(row);
        var marked = MarkedSource.Parse(given.Text);
        var bag = new MessageBag();

        var range = new RuleLanguage(ExampleSymbols.Plain, LoadLimits.Default, bag)
            .ReadRange(Reading.Mapped(marked.Text), Unit.Find(given.Scope)!);

        var said = bag.Sorted();
        Assert.Equal(given.Text, MarkedSource.Show(marked.Text, said.Select(m => m.Location.Span)));
        Assert.Equal(given.Result, range is { } interval ? Show(interval) : string.Join(' ', said.Select(m => $"{m.Code} {m.Text}")));
    }

    [Theory]
    [InlineData("mm", "0.5 mm", "0.5")]
    [InlineData("mm", " 3 cm ", "30")]
    [InlineData("deg", "-5 deg", "-5")]
    [InlineData("%", "50 %", "0.5")]
    [InlineData("1", "0.7", "0.7")]
    [InlineData("years", "2 years", "24")]
    public void A_quantity_is_read_in_base_units(string unit, string text, string inBase)
    {
        var bag = new MessageBag();

        var quantity = new RuleLanguage(ExampleSymbols.Plain, LoadLimits.Default, bag)
            .ReadQuantity(Reading.Mapped(text), Unit.Find(unit)!);

        Assert.Equal(0, bag.Count);
        Assert.Equal(inBase, quantity?.InBase.ToString());
    }

    [Theory]
    [InlineData("mm", "", "FR2011")]
    [InlineData("mm", "mm", "FR2010")]
    [InlineData("mm", "5", "FR3308")]
    [InlineData("mm", "5 deg", "FR3307")]
    [InlineData("mm", "5 mm 6", "FR2010")]
    [InlineData("mm", "1 mm to 2 mm", "FR2010")]
    public void What_is_no_quantity_is_said(string unit, string text, string code)
    {
        var bag = new MessageBag();

        var quantity = new RuleLanguage(ExampleSymbols.Plain, LoadLimits.Default, bag)
            .ReadQuantity(Reading.Mapped(text), Unit.Find(unit)!);

        Assert.Null(quantity);
        Assert.Equal([code], bag.Sorted().Select(m => m.Code));
    }

    private static string Show(Interval interval) =>
        $"{(interval.LowClosed ? '[' : '(')}{interval.Low?.ToString() ?? "…"} {interval.High?.ToString() ?? "…"}{(interval.HighClosed ? ']' : ')')}";
}
