using System.Collections.Frozen;
using System.Collections.Immutable;

namespace FindingRules.Packs.Binding.Files;

/// <summary>The kinds of files that a manifest lists; the word is the kind's key in the manifest.</summary>
internal static class FileKind
{
    public const string Vocabulary = "vocabulary";
    public const string References = "references";
    public const string Topics = "topics";
    public const string NextSteps = "next-steps";
    public const string Cautions = "cautions";
    public const string Measures = "measures";
    public const string Scales = "scales";
    public const string Rules = "rules";
    public const string Protocols = "protocols";
    public const string Cases = "cases";

    public static ImmutableArray<string> All { get; } =
        [Vocabulary, References, Topics, NextSteps, Cautions, Measures, Scales, Rules, Protocols, Cases];

    public static FrozenSet<string> NamesRulesUse { get; } =
        FrozenSet.Create(StringComparer.Ordinal, Vocabulary, Topics, NextSteps, Cautions, Measures, Scales);

    /// <summary>The keys at the margin of a file of the kind.</summary>
    public static string[] RootKeys(string kind) => kind switch
    {
        Vocabulary => ["axes", "kinds", "structures", "study"],
        NextSteps => ["next-steps", "evaluate"],
        _ => [kind],
    };
}
