using FindingRules.Model.Readings;
using FindingRules.Output;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.FrontDoor;

public sealed class ReadingTextTests
{
    [Fact]
    public void A_reading_with_everything_in_it() => Snapshot.Match(Text(SampleReading.Full));

    [Fact]
    public void A_reading_with_nothing_in_it() => Snapshot.Match(Text(SampleReading.Empty));

    [Fact]
    public void No_reading_is_said_in_so_many_words()
    {
        using var to = new StringWriter { NewLine = "\n" };
        ReadingText.Write(to, new NoReading("the study has 2 errors", "march.ndjson", 3, []));
        Snapshot.Match(to.ToString());
    }

    [Fact]
    public void Nothing_is_wider_than_a_hundred_columns() =>
        Assert.All(Text(SampleReading.Full).Split('\n'), line => Assert.InRange(line.Length, 0, 100));

    private static string Text(Reading reading)
    {
        using var to = new StringWriter { NewLine = "\n" };
        ReadingText.Write(to, reading);
        return to.ToString();
    }
}
