using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using Xunit;

namespace FindingRules.Tests.Packs.Studies;

public class StudyValueTests
{
    [Theory]
    [InlineData("\"14 mm\"", "14", "14", "14 mm", false)]
    [InlineData("\"14mm\"", "14", "14", "14 mm", false)]
    [InlineData("\"1.40 cm\"", "14", "14", "1.4 cm", false)]
    [InlineData("{ \"value\": 6.1, \"unit\": \"mm\" }", "6.1", "6.1", "6.1 mm", false)]
    [InlineData("{ \"value\": \"6.10\", \"unit\": \"mm\" }", "6.1", "6.1", "6.1 mm", false)]
    [InlineData("\"2 mm to 3 mm\"", "2", "3", "2 mm to 3 mm", true)]
    [InlineData("\"2 mm to 0.3 cm\"", "2", "3", "2 mm to 0.3 cm", true)]
    public void A_measure_is_exact_whatever_its_unit(string json, string low, string high, string shown, bool isBound)
    {
        var value = (MeasuredValue)Finding("tear-length", json);
        Assert.Equal(Interval.Closed(Number(low), Number(high)), value.Interval);
        Assert.Equal((shown, isBound), (value.Shown, value.IsBound));
    }

    [Theory]
    [InlineData("\"<2 mm\"", "1", true, "2", false, "less than 2 mm")]
    [InlineData("\"<= 2 mm\"", "1", true, "2", true, "at most 2 mm")]
    [InlineData("\">5 cm\"", "50", false, "80", true, "more than 5 cm")]
    [InlineData("\">=5 cm\"", "50", true, "80", true, "at least 5 cm")]
    [InlineData("{ \"value\": 5, \"unit\": \"cm\", \"comparator\": \">=\" }", "50", true, "80", true, "at least 5 cm")]
    [InlineData("\"<200 mm\"", "1", true, "80", true, "less than 200 mm")]
    public void A_bound_is_all_that_is_plausible_on_its_side(string json, string low, bool lowIn, string high, bool highIn, string shown)
    {
        var value = (MeasuredValue)Finding("tear-length", json);
        Assert.Equal(new Interval(Number(low), lowIn, Number(high), highIn), value.Interval);
        Assert.Equal((shown, true), (value.Shown, value.IsBound));
    }

    [Theory]
    [InlineData("\"none\"", "none")]
    [InlineData("\"bursal\"", "bursal")]
    [InlineData("{ \"from\": \"bursal\", \"to\": \"articular\" }", "bursal to articular")]
    [InlineData("[ \"articular\", \"bursal\" ]", "bursal and articular")]
    [InlineData("[ { \"from\": \"bursal\", \"to\": \"bursal\" }, \"articular\" ]", "bursal and articular")]
    public void An_extent_is_its_stretches_in_order(string json, string shown) => Assert.Equal(shown, Finding("fluid", json).ToString());

    [Theory]
    [InlineData("\"present\"", true)]
    [InlineData("true", true)]
    [InlineData("\"absent\"", false)]
    [InlineData("false", false)]
    public void A_sign_is_present_or_absent(string json, bool isPresent) => Assert.Equal(new SignValue(isPresent), Finding("shadowing", json));

    [Theory]
    [InlineData("tear-length")]
    [InlineData("fluid")]
    [InlineData("shadowing")]
    [InlineData("echo")]
    public void Any_finding_may_be_not_assessable(string finding) =>
        Assert.IsType<NotAssessableValue>(Finding(finding, "\"not-assessable\""));

    [Theory]
    [InlineData("47 years", "564")]
    [InlineData("0 months", "0")]
    [InlineData("23 months", "23")]
    [InlineData("2 a", "24")]
    public void An_age_is_whole_years_or_few_months(string age, string months)
    {
        var (study, messages) = Reads.Study($$"""{ "study": "S", "facts": { "age": "{{age}}" } }""");
        Assert.Equal("", Reads.Show(messages));
        Assert.Equal(Interval.Point(Number(months)), ((MeasuredValue)study!.Facts.Find("age")!.Value).Interval);
    }

    [Theory]
    [InlineData("24 months")]
    [InlineData("3.5 months")]
    [InlineData("47.25 years")]
    public void A_finer_age_is_refused(string age) =>
        Assert.Equal(["FR5032"], Reads.Codes(Reads.Study($$"""{ "study": "S", "facts": { "age": "{{age}}" } }""").Messages));

    [Theory]
    [InlineData("14 cm", "14 mm")]
    [InlineData("0.9 mm", "0.9 cm")]
    [InlineData("140 mm", "14 mm")]
    public void A_likely_slip_is_named(string sent, string meant)
    {
        var message = Assert.Single(Reads.Study(Sent("tear-length", $"\"{sent}\"")).Messages);
        Assert.Equal(("FR5023", meant), (message.Code, message.Fix?.Replacement));
        Assert.Equal(sent, message.Location.Words);
        Assert.Contains(meant, message.Label);
    }

    [Theory]
    [InlineData("\"1234567890123456789012345678 mm\"", "FR5023")]
    [InlineData("\"12345678901234567890123456789 mm\"", "FR5022")]
    [InlineData("{ \"value\": 12345678901234567890123456789, \"unit\": \"mm\" }", "FR5022")]
    [InlineData("{ \"value\": 1e1, \"unit\": \"mm\" }", "FR5018")]
    [InlineData("{ \"value\": true, \"unit\": \"mm\" }", "FR5018")]
    [InlineData("{ \"value\": 14 }", "FR5019")]
    [InlineData("{ \"unit\": \"mm\" }", "FR5007")]
    [InlineData("\"14\"", "FR5019")]
    [InlineData("\"14 mm long\"", "FR5018")]
    [InlineData("\"about 14 mm\"", "FR5018")]
    [InlineData("\"<1 mm\"", "FR5023")]
    [InlineData("\"<2 mm to 3 mm\"", "FR5018")]
    [InlineData("\"2 mm to 3 deg\"", "FR5018")]
    [InlineData("\"-3 mm\"", "FR5023")]
    [InlineData("[\"14 mm\"]", "FR5018")]
    [InlineData("null", "FR5018")]
    [InlineData("\"\"", "FR5018")]
    public void What_is_no_measure_is_told(string json, string code) =>
        Assert.Equal([code], Reads.Codes(Reads.Study(Sent("tear-length", json)).Messages));

    [Fact]
    public void Quantities_are_read_without_much_allocation()
    {
        QuantityText.Read("14 mm");
        var before = GC.GetAllocatedBytesForCurrentThread();
        QuantityText.Read("14 mm");
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 200);
    }

    private static FindingValue Finding(string name, string json)
    {
        var (study, messages) = Reads.Study(Sent(name, json));
        Assert.Equal("", Reads.Show(messages));
        return study!.Subjects[0].Findings.Find(name)!.Value;
    }

    private static string Sent(string finding, string json) => $$"""
        { "study": "S", "subjects": [ { "structure": "supraspinatus", "side": "right", "findings": { "{{finding}}": {{json}} } } ] }
        """;

    private static Rational Number(string text) => Rational.TryRead(text, out var number) ? number : throw new FormatException(text);
}
