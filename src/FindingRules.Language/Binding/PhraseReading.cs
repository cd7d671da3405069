using System.Collections.Immutable;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;

namespace FindingRules.Language.Binding;

/// <summary>One way to read a phrase. <paramref name="Target"/> is null where a structure stands alone.</summary>
internal sealed record PhraseReading(PlaceCandidate At, Target? Target, ImmutableArray<WordSyntax> Values)
{
    public Place Place => At.Place;

    /// <summary>The words that have this meaning and no other.</summary>
    public string SayAs => string.Join(' ', [At.SayAs, .. Target is null ? [] : (string[])[Target.Name], .. Values.Select(v => v.Text)]);

    /// <summary>Every reading whose names exist, whether or not it makes sense where it stands.</summary>
    /// <param name="context">The vocabulary.</param>
    /// <param name="places">What the first words may mean.</param>
    /// <param name="phrase">The words.</param>
    /// <param name="given">Values that stand apart from the phrase, behind <c>is</c>.</param>
    public static List<PhraseReading> All(
        BindingContext context, List<PlaceCandidate> places, PhraseSyntax phrase, ImmutableArray<WordSyntax> given)
    {
        var readings = new List<PhraseReading>();
        foreach (var place in places)
        {
            var rest = phrase.Words.AsSpan()[place.Understood..];
            if (rest.IsEmpty)
            {
                var before = readings.Count;
                if (given is [var only]) AddBareValues(context, place, only, readings);
                if (readings.Count == before) readings.Add(new PhraseReading(place, null, given));
                continue;
            }
            ImmutableArray<WordSyntax> values = [.. rest[1..], .. given];
            foreach (var target in ScopeNames.Find(context.Symbols, place.Scope, rest[0].Text))
                readings.Add(new PhraseReading(place, target, values));
            if (place.Understood > 0 && rest.Length == 1 && given.IsEmpty) AddBareValues(context, place, rest[0], readings);
        }
        return readings;
    }

    /// <summary><c>biceps subluxed</c>: the value says which finding or topic of the structure is meant.</summary>
    private static void AddBareValues(BindingContext context, PlaceCandidate place, WordSyntax value, List<PhraseReading> readings)
    {
        foreach (var target in ScopeNames.WithValue(context.Symbols, place.Scope, value.Text))
            readings.Add(new PhraseReading(place, target, [value]));
    }
}
