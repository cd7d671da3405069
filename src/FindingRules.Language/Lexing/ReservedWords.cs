using System.Collections.Frozen;
using System.Collections.Immutable;
using FindingRules.Model.Quantities;

namespace FindingRules.Language.Lexing;

/// <summary>The words of the language. A pack cannot use one of them, or the name of a unit, as a name of its own.</summary>
public static class ReservedWords
{
    public static ImmutableSortedSet<string> All { get; } = ImmutableSortedSet.CreateRange(
        StringComparer.Ordinal,
        [
            "and", "or", "not", "is", "no", "any", "every", "at", "least", "most", "above", "below", "between", "from",
            "to", "spans", "reaches", "within", "assessed", "assessable", "where", "earlier", "ipsilateral", "contralateral",
            "study", "evaluate", "next", "hold", "caution", "each", "probability", "after",
            .. Unit.All.SelectMany(u => new[] { u.Name, u.Ucum }).Where(n => n.All(char.IsAsciiLetterOrDigit) && char.IsAsciiLetter(n[0])),
        ]);

    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> Lookup =
        All.ToFrozenSet(StringComparer.Ordinal).GetAlternateLookup<ReadOnlySpan<char>>();

    public static bool Contains(ReadOnlySpan<char> word) => Lookup.Contains(word);
}
