using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>A rule that is cut short anywhere is read or answered with a message within its text.</summary>
public sealed class PrefixTests
{
    public static TheoryData<string, string> Rules => new()
    {
        { "each cuff-tendon", "fluid spans bursal to articular surface and reangled persists → full-thickness" },
        { "each cuff-tendon", "(echo hypoechoic or anechoic) and not reangled persists\n→ hold tear-depth; re-angle next\n" },
        { "each cuff-tendon", "tear-length assessed and arm-position is not modified-crass -> caution position-overestimates" },
        { "each tendon", "thickness above 8 mm or thickness >= 1.5 (contralateral thickness - 0.5 mm) / 2 → thickened" },
        { "each tendon", "thickness between 2 mm and 8 mm and no shadowing → tendon-state regular" },
        { "each biceps", "biceps subluxed and not (ipsilateral subscapularis tear-depth full-thickness) → evaluate subscapularis" },
        { "study", "radiograph negative and suspected wood or glass → ultrasound next" },
        { "study", "at least 2 cuff-tendon where (tear-depth full-thickness or bursal-sided) → several-torn; refer" },
    };

    [Theory]
    [MemberData(nameof(Rules))]
    public void Every_beginning_is_answered(string scope, string rule)
    {
        Assert.Equal("", Reading.Rule(scope, rule).Said);
        for (var length = 0; length < rule.Length; length++) Answers(scope, rule[..length]);
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void Every_ending_and_every_gap_is_answered(string scope, string rule)
    {
        for (var at = 0; at < rule.Length; at++)
        {
            Answers(scope, rule[at..]);
            Answers(scope, rule.Remove(at, 1));
            Answers(scope, rule.Insert(at, "§"));
            Answers(scope, rule.Insert(at, "("));
        }
    }

    private static void Answers(string scope, string text)
    {
        var reading = Reading.Rule(scope, text);
        reading.AssertAnswered();
        if (reading.Messages.Any(m => m.Code.StartsWith("FR2", StringComparison.Ordinal) && string.CompareOrdinal(m.Code, "FR2012") < 0))
            Assert.True(reading.Messages.Length == 1, $"{text}\n{reading.Said}");
    }
}
