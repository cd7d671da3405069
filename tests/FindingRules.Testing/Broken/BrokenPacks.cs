using System.Collections.Immutable;

namespace FindingRules.Testing.Broken;

/// <summary>
/// Every way of spoiling a pack that the tests know, the same ones in every run. Each pack is wrong: none may load, and
/// each must be told what is wrong, at a place in its files.
/// </summary>
public static class BrokenPacks
{
    public static ImmutableSortedDictionary<string, Func<IEnumerable<BrokenPack>>> ByDamage { get; } =
        new Dictionary<string, Func<IEnumerable<BrokenPack>>>
        {
            ["cut between lines"] = PackCuts.BetweenLines,
            ["cut within lines"] = PackCuts.WithinLines,
            ["keys misspelt"] = PackTypos.InKeys,
            ["words of rules misspelt"] = PackTypos.InRules,
            ["names misspelt"] = PackTypos.InNames,
            ["lines doubled"] = PackLines.Doubled,
            ["lines lost"] = PackLines.Lost,
            ["values of another sort"] = PackValues.OfAnotherSort,
            ["values out of order"] = PackValues.OutOfOrder,
            ["yaml that packs do without"] = PackSyntax.DoneWithout,
            ["yaml that is none"] = PackSyntax.Wrong,
            ["characters nobody sees"] = PackCharacters.Unseen,
            ["bytes that are no text"] = PackCharacters.NoText,
            ["noise"] = PackCharacters.Noise,
            ["nested too deep"] = PackSizes.TooDeep,
            ["too large"] = PackSizes.TooLarge,
            ["files lost, added or swapped"] = PackFiles.Disordered,
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public static IEnumerable<BrokenPack> All => ByDamage.Values.SelectMany(make => make());
}
