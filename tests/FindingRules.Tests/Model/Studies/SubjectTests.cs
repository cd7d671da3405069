using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing.Generators;
using Xunit;

namespace FindingRules.Tests.Model.Studies;

public sealed class SubjectTests
{
    private static readonly Kind _kind = ModelOf.Kind("tendon", null);
    private static readonly Structure _paired = ModelOf.Structure("supraspinatus", _kind, isPaired: true);
    private static readonly Structure _unpaired = ModelOf.Structure("midline-band", _kind, isPaired: false);

    [Fact]
    public void Is_named_by_side_structure_and_lesion()
    {
        Assert.Equal("study", Subject.Study.Key);
        Assert.Equal("right supraspinatus", new Subject(_paired, Side.Right, null).Key);
        Assert.Equal("left supraspinatus lesion L1", new Subject(_paired, Side.Left, "L1").Key);
        Assert.Equal("midline-band", new Subject(_unpaired, Side.None, null).Key);
        Assert.Equal("side-not-stated supraspinatus", new Subject(_paired, Side.Unknown, null).Key);
        Assert.Equal("supraspinatus (side not stated) (lesion L2)", new Subject(_paired, Side.Unknown, "L2").Title);
    }

    [Fact]
    public void The_study_comes_first_then_structures_sides_and_lesions_in_order()
    {
        Subject[] ordered =
        [
            Subject.Study, new(_unpaired, Side.None, null), new(_paired, Side.Left, null), new(_paired, Side.Right, null),
            new(_paired, Side.Right, "L1"), new(_paired, Side.Right, "L2"), new(_paired, Side.Unknown, null),
        ];
        Assert.Equal(ordered, ordered.Reverse().Order());
        Assert.True(ordered[0] < ordered[1] && ordered[2] > ordered[1] && ordered[3] >= ordered[3] && ordered[3] <= ordered[4]);
    }

    [Fact]
    public void Sides_have_an_opposite_where_they_are_stated()
    {
        Assert.Equal((Side.Right, Side.Left), (Side.Left.Other(), Side.Right.Other()));
        Assert.Equal((Side.Unknown, Side.None), (Side.Unknown.Other(), Side.None.Other()));
    }

    [Fact]
    public void Extents_are_equal_by_their_stretches_and_read_as_words()
    {
        var axis = ModelOf.Axis("surface", "bursal", "intrasubstance", "articular");
        Assert.Equal(new ExtentValue(axis, [new(0, 1)]), new ExtentValue(axis, [new(0, 1)]));
        Assert.NotEqual(new ExtentValue(axis, [new(0, 1)]), new ExtentValue(axis, [new(0, 0), new(1, 1)]));
        Assert.Equal("bursal to intrasubstance and articular", new ExtentValue(axis, [new(0, 1), new(2, 2)]).ToString());
        Assert.Equal("none", new ExtentValue(axis, []).ToString());
    }
}
