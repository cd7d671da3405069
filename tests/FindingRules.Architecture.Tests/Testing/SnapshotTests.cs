using System.Text.RegularExpressions;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Architecture.Tests.Testing;

public sealed class SnapshotTests
{
    [Fact]
    public void A_text_that_was_accepted_passes() => Snapshot.Match("first\r\nsecond\r\n");

    [Fact]
    public void A_text_that_differs_fails_with_the_lines_that_differ()
    {
        if (Environment.GetEnvironmentVariable("ACCEPT_SNAPSHOTS") == "1") return;
        var failure = Assert.Throws<SnapshotException>(() => Snapshot.Match("first\nthird\n", "other"));
        Assert.Contains("- second\n+ third", failure.Message, StringComparison.Ordinal);
        var received = Repository.Files("tests", "*.other.received.txt").Single();
        Assert.Equal("first\nthird\n", File.ReadAllText(received));
        File.Delete(received);
    }

    [Fact]
    public void Every_verified_file_belongs_to_a_test()
    {
        var verified = Repository.Files("tests", "*.verified.*").ToArray();
        Assert.NotEmpty(verified);
        Assert.Equal([], verified.Where(IsOrphan).Select(Repository.Relative));
    }

    private static bool IsOrphan(string verified)
    {
        var parts = Path.GetFileName(verified).Split('.');
        var source = Path.Combine(Path.GetDirectoryName(verified)!, parts[0] + ".cs");
        if (!File.Exists(source)) return true;
        var text = File.ReadAllText(source);
        return !Regex.IsMatch(text, $@"\b{parts[1]}\(") || !text.Contains("Snapshot.Match(", StringComparison.Ordinal);
    }
}
