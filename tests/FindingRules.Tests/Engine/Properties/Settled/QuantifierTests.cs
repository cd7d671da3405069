using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

/// <summary>Quantifiers range over the vocabulary's structures, not over what was sent. The cuff has two here.</summary>
public sealed class QuantifierTests
{
    private static readonly Condition _dark = Own.Is("echo", "anechoic");

    [Fact]
    public void Every_and_no_are_unknown_of_a_half_examined_shoulder()
    {
        Assert.Equal(Truth.Unknown, Of(Every(Cuff, _dark), Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.Unknown, Of(No(Cuff, _dark), Right("supraspinatus", ("echo", "fibrillar"))));
    }

    [Fact]
    public void One_examined_structure_settles_any_and_refutes_every_and_no()
    {
        Assert.Equal(Truth.True, Of(Any(Cuff, _dark), Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.False, Of(No(Cuff, _dark), Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.False, Of(Every(Cuff, _dark), Right("supraspinatus", ("echo", "fibrillar"))));
    }

    [Fact]
    public void A_rule_with_a_side_counts_on_its_own_side()
    {
        Assert.Equal(Truth.True, Of(Every(Cuff, _dark), Right("supraspinatus", ("echo", "anechoic")), Right("infraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.Unknown, Of(Any(Cuff, _dark), Left("supraspinatus", ("echo", "anechoic"))));
    }

    [Fact]
    public void At_least_counts_what_is_true_and_what_may_be()
    {
        StudySubject[] one = [Right("supraspinatus", ("echo", "anechoic"))];
        Assert.Equal(Truth.True, Of(AtLeast(1, Cuff, _dark), one));
        Assert.Equal(Truth.Unknown, Of(AtLeast(2, Cuff, _dark), one));
        Assert.Equal(Truth.False, Of(AtLeast(3, Cuff, _dark), one));
    }

    [Fact]
    public void A_study_rule_counts_both_sides()
    {
        var outcome = Decide(
            [
                Rule("TWO", Scope.Study, AtLeast(2, Only("supraspinatus"), _dark)),
                Rule("EVERY", Scope.Study, Every(Only("supraspinatus"), _dark)),
                Rule("UNPAIRED", Scope.Study, AtLeast(1, Only("midline-band"), _dark)),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic")), Left("supraspinatus", ("echo", "anechoic")), Subject("midline-band", Side.None, ("echo", "anechoic"))));
        Assert.Equal(Truth.True, outcome.Truth("TWO", "study"));
        Assert.Equal(Truth.True, outcome.Truth("EVERY", "study"));
        Assert.Equal(Truth.True, outcome.Truth("UNPAIRED", "study"));
    }

    [Fact]
    public void Of_a_subject_without_a_stated_side_paired_structures_are_unknown()
    {
        var outcome = Decide(
            [Rule("ANY", Only("biceps"), Any(Cuff, _dark)), Rule("BAND", Only("biceps"), Any(Only("midline-band"), _dark))],
            Study(Subject("biceps", Side.Unknown), Right("supraspinatus", ("echo", "anechoic")), Left("supraspinatus", ("echo", "anechoic")),
                Subject("midline-band", Side.None, ("echo", "anechoic"))));
        Assert.Equal(Truth.Unknown, outcome.Truth("ANY", "biceps", Side.Unknown));
        Assert.Equal(Truth.True, outcome.Truth("BAND", "biceps", Side.Unknown));
    }

    [Fact]
    public void From_a_structure_in_the_midline_both_sides_are_counted()
    {
        var outcome = Decide(
            [Rule("ANY", Only("midline-band"), Any(Cuff, _dark))],
            Study(Subject("midline-band", Side.None), Left("infraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.True, outcome.Truth("ANY", "midline-band"));
    }

    [Fact]
    public void Assessed_of_an_unexamined_structure_is_false_and_not_unknown()
    {
        Assert.Equal(Truth.False, Of(Every(Cuff, Own.Assessed("echo")), Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.True, Of(AtLeast(1, Cuff, Not(Own.Assessed())), Right("supraspinatus", ("echo", "anechoic"))));
    }

    [Fact]
    public void Places_inside_are_seen_from_the_structure_that_is_counted()
    {
        var thicker = Own.The("thickness").Above(OtherSide.The("thickness"));
        Assert.Equal(
            Truth.True,
            Of(Any(Cuff, thicker), Right("infraspinatus", ("thickness", 6)), Left("infraspinatus", ("thickness", 4))));
    }

    [Fact]
    public void A_quantifier_inside_another_counts_on_the_side_of_what_is_counted()
    {
        var both = Any(Only("supraspinatus"), And(_dark, Any(Only("biceps"), _dark)));
        var crossed = Decide(
            [Rule("BOTH", Scope.Study, both)],
            Study(
                Right("supraspinatus", ("echo", "anechoic")), Left("supraspinatus", ("echo", "fibrillar")),
                Right("biceps", ("echo", "fibrillar")), Left("biceps", ("echo", "anechoic"))));
        Assert.Equal(Truth.False, crossed.Truth("BOTH", "study"));
    }

    private static Truth Of(Condition condition, params StudySubject[] cuff) =>
        Decide([Rule("R", Only("biceps"), condition)], Study([Right("biceps"), .. cuff])).Truth("R", "right biceps");
}
