using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace FindingRules.Testing.Broken;

/// <summary>Every way of spoiling a study that the tests know, the same ones in every run. None may give a reading.</summary>
public static partial class BrokenStudies
{
    public static ImmutableSortedDictionary<string, Func<IEnumerable<BrokenStudy>>> ByDamage { get; } =
        new Dictionary<string, Func<IEnumerable<BrokenStudy>>>
        {
            ["cut short"] = CutShort,
            ["words misspelt"] = Misspelt,
            ["values of another sort"] = OfAnotherSort,
            ["members doubled"] = Doubled,
            ["members lost"] = Lost,
            ["meanings that are none"] = StudyMistakes.OfMeaning,
            ["json that is none"] = StudyMistakes.OfForm,
            ["nested too deep or too large"] = StudyMistakes.OfSize,
            ["noise"] = StudyMistakes.Noise,
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public static IEnumerable<BrokenStudy> All => ByDamage.Values.SelectMany(make => make());

    private static IEnumerable<BrokenStudy> CutShort() =>
        Enumerable.Range(0, BrokenStudy.Whole.Length - 1).Where(n => n % 3 == 0)
            .Select(n => new BrokenStudy($"cut after {n} characters", BrokenStudy.Whole[..n]));

    // What the sender chooses freely: keys and ids.
    private static readonly HashSet<string> Free = ["S-1", "S-0", "L1", "L2"];

    private static IEnumerable<BrokenStudy> Misspelt() =>
        from text in TextValue().Matches(BrokenStudy.Whole)
        where !Free.Contains(text.Groups[1].Value)
        from instead in new[] { $"{text.Groups[1].Value}q", text.Groups[1].Value.ToUpperInvariant() }
        where instead != text.Groups[1].Value
        select With($"{text.Value} at {text.Index} became {instead}", text, $"\"{instead}\"");

    private static IEnumerable<BrokenStudy> OfAnotherSort() =>
        from value in Value().Matches(BrokenStudy.Whole)
        from instead in new[] { "null", "3.5", "[[1]]", "{ \"qqq\": 1 }", "\"qqq qqq\"" }
        where !(instead == "3.5" && char.IsDigit(value.Value[0]))
        where !(instead == "3.5" && value.Value == "\"2\"")
        select With($"{value.Value} at {value.Index} became {instead}", value, instead);

    private static IEnumerable<BrokenStudy> Doubled() =>
        from member in Member().Matches(BrokenStudy.Whole)
        select With($"{member.Value} at {member.Index} doubled", member, $"{member.Value}, {member.Value}");

    private static IEnumerable<BrokenStudy> Lost() =>
        from member in NeededMember().Matches(BrokenStudy.Whole)
        select With($"{member.Value} at {member.Index} lost", member, "");

    private static BrokenStudy With(string name, Match place, string instead) =>
        new(name, BrokenStudy.Whole[..place.Index] + instead + BrokenStudy.Whole[(place.Index + place.Length)..]);

    [GeneratedRegex("\"([^\"]*)\"")]
    private static partial Regex TextValue();

    [GeneratedRegex("(?<=: |\\[)(?:\"[^\"]*\"|true|[0-9.]+)")]
    private static partial Regex Value();

    [GeneratedRegex("\"[^\"]*\": (?:\"[^\"]*\"|true|[0-9.]+)")]
    private static partial Regex Member();

    [GeneratedRegex("\"(?:study|protocol|structure|id|value|unit|from|to)\": (?:\"[^\"]*\"|[0-9.]+),?")]
    private static partial Regex NeededMember();
}
