using FindingRules.Language;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>Derived measures and what scales grade.</summary>
public sealed class ExpressionTests
{
    [Theory]
    [InlineData("defect-depth / thickness", "(own defect-depth / own thickness)")]
    [InlineData("thickness", "own thickness")]
    [InlineData("depth-share * 2", "(own derived depth-share * 2)")]
    [InlineData("(thickness + contralateral thickness) / 2", "((own thickness + contralateral thickness) / 2)")]
    [InlineData("tear-length - earlier tear-length", "(own tear-length - earlier own tear-length)")]
    [InlineData("3 cm", "30 mm")]
    public void An_expression_is_read(string text, string canonical)
    {
        var (expression, said) = Read(text);

        Assert.Equal("", said);
        Assert.Equal(canonical, ConditionText.Canonical(expression!));
        Assert.Equal(canonical, ConditionText.Canonical(Read(ConditionText.Words(expression!)).Expression!));
    }

    [Theory]
    [InlineData("", "FR2011")]
    [InlineData("thickness +", "FR2011")]
    [InlineData("thickness above 4 mm", "FR2010")]
    [InlineData("thickness + 3", "FR3301")]
    [InlineData("thickness + age", "FR3303")]
    [InlineData("echo / 2", "FR3203")]
    [InlineData("(echo anechoic) / 2", "FR3203")]
    [InlineData("(shadowing and trauma) / 2", "FR2014")]
    [InlineData("thicknes / 2", "FR3001")]
    public void What_is_no_expression_is_said(string text, string code)
    {
        var (expression, said) = Read(text);

        Assert.Null(expression);
        Assert.Equal(code, said);
    }

    private static (QuantityExpression? Expression, string Said) Read(string text)
    {
        var bag = new MessageBag();
        var expression = new RuleLanguage(ExampleSymbols.Plain, LoadLimits.Default, bag)
            .ReadExpression(Reading.Mapped(text), Reading.ScopeOf(ExampleSymbols.Plain, "each cuff-tendon"));
        return (expression, string.Join(' ', bag.Sorted().Select(m => m.Code)));
    }
}
