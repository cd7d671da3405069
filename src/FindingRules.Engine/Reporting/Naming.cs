using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// What a caution says of what it rests on. It is no impression: unless its own words name the finding, or the subject that the
/// finding is of, it leaves the finding untold.
/// </summary>
internal static class Naming
{
    public static bool Names(Pack pack, CautionNote caution, Evidence evidence)
    {
        foreach (var part in pack.Symbols.Cautions[caution.Caution].Says.Parts)
            if (part is WordingPlace place && Names(place.Source, caution, evidence))
                return true;
        return false;
    }

    private static bool Names(WordingSource source, CautionNote caution, Evidence evidence) => source switch
    {
        SubjectSource => IsOneOf(caution, evidence.Subject),
        FindingSource { Finding: var finding } => finding.Name == evidence.Finding && IsOneOf(caution, evidence.Subject),
        FactSource { Fact: var fact } => fact.Name == evidence.Finding && evidence.Subject == Subject.Study.Key,
        _ => false,
    };

    /// <summary>A lesion and the structure that it is in are named with each other.</summary>
    private static bool IsOneOf(CautionNote caution, string subject)
    {
        foreach (var named in caution.Subjects)
            if (IsOf(named, subject) || IsOf(subject, named))
                return true;
        return false;
    }

    /// <summary>The structure itself, or a lesion in it.</summary>
    public static bool IsOf(string key, string whole) =>
        key.StartsWith(whole, StringComparison.Ordinal) && (key.Length == whole.Length || key[whole.Length] == ' ');
}
