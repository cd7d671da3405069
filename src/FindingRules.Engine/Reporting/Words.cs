using FindingRules.Model.Packs;

namespace FindingRules.Engine.Reporting;

/// <summary>How a reading spells what has a few values only.</summary>
internal static class Words
{
    public static string Of(Certainty certainty) => certainty switch
    {
        Certainty.Definite => "definite",
        Certainty.Probable => "probable",
        _ => "possible",
    };

    public static string Of(Urgency urgency) => urgency switch
    {
        Urgency.Urgent => "urgent",
        Urgency.Soon => "soon",
        _ => "routine",
    };
}
