using CsCheck;
using FindingRules.Ledger.Indexing;
using Xunit;

namespace FindingRules.Ledger.Tests.Indexing;

public sealed class PlacesTests
{
    private static readonly Gen<ushort[]> Sets = Gen.Int[0, 400].SelectMany(
        n => Gen.UShort[0, Places.Span - 1].Array[n].Select(a => a.Distinct().Order().ToArray()));

    [Fact]
    public void What_is_written_is_read_and_is_never_large() => Sets.Sample(places =>
    {
        var stored = Places.Write([.. places]);
        Assert.InRange(stored.Length, 0, 129);
        Assert.Equal(places.Select(p => (int)p).Reverse(), Places.Read(stored).Descending(Places.Span));
        Assert.Equal(stored, Places.Read(stored).Write());
    });

    /// <summary>As they are made from an older form: however many, a list.</summary>
    [Fact]
    public void A_list_of_any_length_is_read() => Sets.Sample(places =>
    {
        var list = places.SelectMany(p => new[] { (byte)(p >> 8), (byte)p }).ToArray();
        Assert.Equal(Places.Write([.. places]), Places.Read(list).Write());
    });

    [Fact]
    public void Adding_taking_away_and_intersecting_are_those_of_sets() => Gen.Select(Sets, Sets).Sample((one, other) =>
    {
        var (added, removed, both) = (Of(one), Of(one), Of(one));
        foreach (var place in other)
        {
            added.Set(place, true);
            removed.Set(place, false);
        }
        both.IntersectWith(Of(other));
        Assert.Equal(one.Union(other).OrderDescending(), added.Descending(Places.Span).Select(p => (ushort)p));
        Assert.Equal(one.Except(other).OrderDescending(), removed.Descending(Places.Span).Select(p => (ushort)p));
        Assert.Equal(one.Intersect(other).OrderDescending(), both.Descending(Places.Span).Select(p => (ushort)p));
        Assert.Equal(one.Where(p => p < 500).OrderDescending(), Of(one).Descending(500).Select(p => (ushort)p));
    });

    [Fact]
    public void What_is_no_set_of_places_is_refused()
    {
        Assert.Throws<InvalidDataException>(() => Places.Read(new byte[7]));
        Assert.Throws<InvalidDataException>(() => Places.Read([0x04, 0x00]));
    }

    private static Places Of(ushort[] places) => Places.Read(Places.Write([.. places]));
}
