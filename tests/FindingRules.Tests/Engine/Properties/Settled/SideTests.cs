using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

public sealed class SideTests
{
    [Fact]
    public void Ipsilateral_is_the_same_side_and_contralateral_the_other()
    {
        var outcome = Decide(
            [
                Rule("SAME", Only("biceps"), Beside("supraspinatus").Is("echo", "anechoic")),
                Rule("OTHER", Only("biceps"), Opposite("supraspinatus").Is("echo", "anechoic")),
                Rule("ITSELF", Only("biceps"), OtherSide.Is("echo", "hypoechoic")),
            ],
            Study(
                Right("biceps"), Left("biceps", ("echo", "hypoechoic")),
                Right("supraspinatus", ("echo", "fibrillar")), Left("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.False, outcome.Truth("SAME", "right biceps"));
        Assert.Equal(Truth.True, outcome.Truth("OTHER", "right biceps"));
        Assert.Equal(Truth.True, outcome.Truth("ITSELF", "right biceps"));
        Assert.Equal(Truth.True, outcome.Truth("SAME", "left biceps"));
    }

    [Fact]
    public void From_a_side_not_sent_every_paired_structure_is_unknown()
    {
        var outcome = Decide(
            [
                Rule("SAME", Only("biceps"), Beside("supraspinatus").Is("echo", "anechoic")),
                Rule("OTHER", Only("biceps"), OtherSide.Is("echo", "anechoic")),
                Rule("BAND", Only("biceps"), Beside("midline-band").Is("echo", "anechoic")),
                Rule("OWN", Only("biceps"), Own.Is("echo", "anechoic")),
            ],
            Study(
                Subject("biceps", Side.Unknown, ("echo", "anechoic")), Subject("midline-band", Side.None, ("echo", "anechoic")),
                Right("supraspinatus", ("echo", "anechoic")), Left("supraspinatus", ("echo", "anechoic")),
                Subject("supraspinatus", Side.Unknown, ("echo", "anechoic"))));
        Assert.Equal(Truth.Unknown, outcome.Truth("SAME", "biceps", Side.Unknown));
        Assert.Equal(Truth.Unknown, outcome.Truth("OTHER", "biceps", Side.Unknown));
        Assert.Equal(Truth.True, outcome.Truth("BAND", "biceps", Side.Unknown));
        Assert.Equal(Truth.True, outcome.Truth("OWN", "biceps", Side.Unknown));
    }

    [Fact]
    public void From_the_midline_a_paired_structure_is_unknown_and_an_unpaired_one_itself()
    {
        var outcome = Decide(
            [
                Rule("PAIRED", Only("midline-band"), Beside("biceps").Is("echo", "anechoic")),
                Rule("ITSELF", Only("midline-band"), Beside("midline-band").Is("echo", "anechoic")),
            ],
            Study(Subject("midline-band", Side.None, ("echo", "anechoic")), Right("biceps", ("echo", "anechoic"))));
        Assert.Equal(Truth.Unknown, outcome.Truth("PAIRED", "midline-band"));
        Assert.Equal(Truth.True, outcome.Truth("ITSELF", "midline-band"));
    }

    [Fact]
    public void A_measure_worked_out_elsewhere_sees_other_structures_from_there()
    {
        var band = Beside("midline-band").The("thickness");
        var other = Opposite("infraspinatus").The("thickness");
        var outcome = Decide(
            [
                Rule("MIDLINE", Only("biceps"), Opposite("supraspinatus").Derived("band", band).Above(Mm(3))),
                Rule("BACK", Only("biceps"), Opposite("supraspinatus").Derived("back", other).Above(Mm(3))),
                Rule("FROM-MIDLINE", Only("biceps"), Beside("midline-band").Derived("other", other).Above(Mm(3))),
            ],
            Study(
                Right("biceps"), Subject("midline-band", Side.None, ("thickness", 4)),
                Right("infraspinatus", ("thickness", 4)), Left("infraspinatus", ("thickness", 2))));
        Assert.Equal(Truth.True, outcome.Truth("MIDLINE", "right biceps"));
        Assert.Equal(Truth.True, outcome.Truth("BACK", "right biceps"));
        Assert.Equal(Truth.Unknown, outcome.Truth("FROM-MIDLINE", "right biceps"));
    }

    [Fact]
    public void A_protocol_makes_the_structures_it_requires_subjects_on_its_side()
    {
        var outcome = Decide(
            [Rule("DARK", Tendon, Own.Is("echo", "anechoic"))],
            Study(Right("biceps", ("echo", "anechoic"))).UnderProtocol(Side.Right, "biceps", "supraspinatus", "midline-band"));
        Assert.Equal(["midline-band", "right biceps", "right supraspinatus"], outcome.Rules.Select(r => r.Subject.Key).Order());
        Assert.Equal(Truth.Unknown, outcome.Truth("DARK", "right supraspinatus"));
    }
}
