using FindingRules.Model.Messages;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>
/// What is said of the texts in <c>errors.cases</c>, where it is underlined (between the marks), and that a fix mends it.
/// </summary>
public sealed class ErrorCaseTests
{
    public static TheoryData<string> Cases => [.. CaseFile.Whole("errors.cases")];

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_message_says_this_of_these_words(string block)
    {
        var given = CaseFile.Read(block);
        var source = MarkedSource.Parse(given.Text);

        var reading = Read(given, source.Text);

        var spans = reading.Messages.Select(m => m.Location.Span).Distinct();
        Assert.Equal(given.Text, MarkedSource.Show(source.Text, spans));
        Assert.Equal(given.Result, Show(reading));
        Assert.Null(reading.Canonical);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_fix_takes_its_message_away(string block)
    {
        var given = CaseFile.Read(block);
        var source = MarkedSource.Parse(given.Text).Text;
        var before = Read(given, source).Messages;

        foreach (var message in before.Where(m => m.Fix is not null))
        {
            var span = message.Fix!.Location.Span;
            var mended = source[..span.Start] + message.Fix.Replacement + source[span.End..];
            var after = Read(given, mended).Messages;
            Assert.True(
                after.Count(m => m.Code == message.Code) < before.Count(m => m.Code == message.Code),
                $"{mended}\n{Read(given, mended).Said}");
        }
    }

    [Fact]
    public void Every_message_of_the_language_is_in_the_cases()
    {
        var pages = MessagePages.Codes.Where(c => string.CompareOrdinal(c, "FR2") > 0 && string.CompareOrdinal(c, "FR35") < 0).ToArray();
        var said = CaseFile.Whole("errors.cases").Concat(CaseFile.Whole("ranges.cases"))
            .SelectMany(b => b.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries))
            .Where(w => w.Length == 6 && w.StartsWith("FR", StringComparison.Ordinal))
            .Distinct().Order(StringComparer.Ordinal);

        Assert.NotEmpty(pages);
        Assert.Equal(pages, said);
    }

    internal static Reading Read(Case given, string text) => text.Contains('→') || text.Contains("->", StringComparison.Ordinal)
        ? Reading.Rule(given.Scope, text, given.Symbols, given.Limits)
        : Reading.Condition(given.Scope, text, given.Symbols, given.Limits);

    internal static string Show(Reading reading) => string.Join('\n', reading.Messages.Select(Show));

    private static string Show(Message message)
    {
        var lines = new List<string> { $"    {message.Code} {message.Text}" };
        if (message.Label is not null) lines.Add($"           {message.Label}");
        if (message.Fix is not null) lines.Add($"           = {message.Fix.Replacement}");
        lines.AddRange(message.Related.Select(r => $"           {r.Label}: {r.Location.Words}"));
        return string.Join('\n', lines);
    }
}
