using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR35xx, continued: bands of scales, places in wording, and what cases expect.</summary>
public static partial class LinkMessages
{
    public static Message BandsOutOfOrder(Location at, string band, string before) =>
        Error(3520, at, $"the band `{band}` lies below `{before}`, which stands before it; expected the smallest first",
            "put the bands in order");

    public static Message BandGap(Location at, string scale, string before, string after, string gap) =>
        Error(3521, at, $"`{scale}` gives no grade to {gap}, between `{before}` and `{after}`; expected bands without a gap",
            "let one of the two begin or end there");

    public static Message BandOverlap(Location at, string scale, string before, string after, string shared) =>
        Error(3522, at, $"`{scale}` puts {shared} in `{before}` and in `{after}`; expected each value in one band",
            "write `below` or `above` at one of the two ends");

    public static Message BandEnd(Location at, string scale, string band, bool isFirst) => isFirst
        ? Error(3523, at,
            $"the first band of `{scale}`, `{band}`, does not reach down to the smallest values; expected it open below",
            "write it as `below …` or `at most …`")
        : Error(3523, at,
            $"the last band of `{scale}`, `{band}`, does not reach up to the largest values; expected it open above",
            "write it as `above …` or `at least …`");

    public static Message UnknownPlace(Location at, string found, string scope, IReadOnlyCollection<string> known)
    {
        var message = Unknown(3530, at, $"there is nothing called `{found}` to fill in for {scope}", found, known);
        return message.Label is null
            ? message with { Label = "a finding, a derived measure, a topic, a study fact, or `subject`" } : message;
    }

    public static Message SubjectOfStudy(Location at) =>
        Error(3531, at, "this wording speaks of the study as a whole, which has no `subject` to name", "take the place out");

    public static Message UnknownExpectation(Location at, string list, string what, string found, IReadOnlyCollection<string> known) =>
        Unknown(3540, at, $"under `{list}`, the pack has no {what} called `{found}`", found, known);

    public static Message MalformedExpectation(Location at, string list, string found, string expected) =>
        Error(3541, at, $"`{found}` cannot come under `{list}`; expected {expected}", null);

    /// <summary>FR3542: a declaration that nothing uses, while many places use a name much like it.</summary>
    public static Message DeclaredOtherwise(Location at, string declared, string used, IReadOnlyList<Location> places) =>
        Error(3542, at, $"`{declared}` is used nowhere, and {places.Count} places use `{used}`, which is not declared",
            $"did you mean `{used}`?") with
        {
            Related = [.. places.Take(3).Select(p => new RelatedPlace(p, $"`{used}` here"))],
            Fix = new Fix($"replace it by `{used}`", at, used),
        };
}
