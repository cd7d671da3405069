using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;

namespace FindingRules.Cases;

/// <summary>The impression line by line, without the notice that every answer ends with.</summary>
internal static class ImpressionComparison
{
    public static IEnumerable<Message> Of(Case @case, Reading reading)
    {
        if (@case.Expect.Impression is not { } impression) yield break;
        var expected = Lines(impression);
        var came = Lines(WithoutNotice(reading));
        for (var i = 0; i < Math.Max(expected.Length, came.Length); i++)
        {
            var (should, does) = (expected.ElementAtOrDefault(i), came.ElementAtOrDefault(i));
            if (should == does) continue;
            yield return CaseMessages.ImpressionDiffers(@case.DeclaredAt, @case.Id, i + 1, should, does);
            yield break;
        }
    }

    private static string WithoutNotice(Reading reading)
    {
        var at = reading.ImpressionText.LastIndexOf(reading.Notice, StringComparison.Ordinal);
        return at < 0 || reading.Notice.Length == 0 ? reading.ImpressionText : reading.ImpressionText[..at];
    }

    private static string[] Lines(string text) =>
        [.. text.ReplaceLineEndings("\n").Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0)];
}
