using FindingRules.Language;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

public sealed class ScopeTests
{
    [Theory]
    [InlineData("study", "study", "")]
    [InlineData("each cuff-tendon", "each cuff-tendon", "infraspinatus subscapularis supraspinatus")]
    [InlineData(" each  biceps ", "each biceps", "biceps")]
    [InlineData("each biceps-tendon", "each biceps-tendon", "biceps")]
    [InlineData("each tendon", "each tendon", "biceps infraspinatus subscapularis supraspinatus")]
    public void A_scope_names_the_study_a_kind_or_a_structure(string text, string written, string structures)
    {
        var bag = new MessageBag();

        var scope = new RuleLanguage(ExampleSymbols.Plain, LoadLimits.Default, bag).ReadScope(Reading.Mapped(text));

        Assert.Equal(0, bag.Count);
        Assert.Equal(written, scope?.Written);
        Assert.Equal(structures, string.Join(' ', scope!.Structures.Select(s => s.Name)));
        Assert.Equal(text == "study", scope.IsStudy);
    }

    [Theory]
    [InlineData("", "FR2011")]
    [InlineData("cuff-tendon", "FR2010")]
    [InlineData("each", "FR2011")]
    [InlineData("each study", "FR2010")]
    [InlineData("study each", "FR2010")]
    [InlineData("Each cuff-tendon", "FR2007")]
    [InlineData("each cuff tendon", "FR3010")]
    [InlineData("each cuf-tendon", "FR3013")]
    [InlineData("each hoof", "FR3014")]
    public void What_is_no_scope_is_said(string text, string code)
    {
        var bag = new MessageBag();

        var scope = new RuleLanguage(ExampleSymbols.Crowded, LoadLimits.Default, bag).ReadScope(Reading.Mapped(text));

        Assert.Null(scope);
        Assert.Equal([code], bag.Sorted().Select(m => m.Code));
    }
}
