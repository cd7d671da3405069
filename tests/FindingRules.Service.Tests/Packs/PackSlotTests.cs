using FindingRules.Model.Packs;
using FindingRules.Service.Packs;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Packs;

/// <summary>When a folder's files count as settled; each look stands for one after the quiet time.</summary>
public sealed class PackSlotTests : IDisposable
{
    private readonly PackDisk _disk = PackDisk.WithExample();
    private readonly PackSlot _slot;

    public PackSlotTests() => _slot = new PackSlot(Path.Combine(_disk.Root, "example"), 0);

    public void Dispose() => _disk.Dispose();

    [Fact]
    public void Files_that_were_seen_the_same_twice_are_taken_once()
    {
        Assert.Equal([Seen.Moving, Seen.Taken, Seen.Same, Seen.Same], [Look(), Look(), Look(), Look()]);
        Assert.Equal("example", _slot.Good?.Pack.Name);
    }

    [Fact]
    public void A_set_of_files_that_is_still_being_written_is_not_taken()
    {
        Settle();
        var before = _slot.Good;
        var rules = PackDisk.Changed("Nothing is left in depth.").Files.Single(f => f.Path == "rules.yaml").Bytes.ToArray();
        for (var part = 1; part <= 12; part++)
        {
            File.WriteAllBytes(_disk.PathOf("example", "rules.yaml"), rules[..(rules.Length * part / 12)]);
            Assert.Equal(Seen.Moving, Look());
            Assert.Same(before, _slot.Good);
        }
        Assert.Equal(Seen.Taken, Look());
        Assert.NotEqual(before!.Pack.TextDigest, _slot.Good!.Pack.TextDigest);
        Assert.Empty(_slot.Refusal);
    }

    [Fact]
    public void A_change_that_was_taken_back_at_once_is_no_change()
    {
        Settle();
        _disk.Write("example", PackDisk.Broken());
        Assert.Equal(Seen.Moving, Look());
        _disk.Write("example", ExamplePack.Plain);
        Assert.Equal([Seen.Same, Seen.Same], [Look(), Look()]);
        Assert.Empty(_slot.Refusal);
    }

    [Fact]
    public void A_folder_that_is_away_for_a_moment_is_not_gone()
    {
        Settle();
        Assert.Equal(Seen.Moving, Look(isThere: false));
        Assert.Equal(Seen.Same, Look());
        Assert.False(_slot.IsGone);
        Assert.Equal([Seen.Moving, Seen.Refused], [Look(isThere: false), Look(isThere: false)]);
        Assert.True(_slot.IsGone);
    }

    [Fact]
    public void Time_stamps_alone_are_no_change()
    {
        Settle();
        File.SetLastWriteTimeUtc(_disk.PathOf("example", "rules.yaml"), new DateTime(2026, 1, 31, 9, 0, 0, DateTimeKind.Utc));
        Assert.Equal(Seen.Same, Look());
    }

    private void Settle()
    {
        Look();
        Assert.Equal(Seen.Taken, Look());
    }

    private Seen Look(bool isThere = true) => _slot.Look(isThere, LoadLimits.Default, DateTimeOffset.UnixEpoch);
}
