using FindingRules.Model.Messages;

namespace FindingRules.Service.Problems;

/// <summary>The heading of a code's page, as the short name of a problem.</summary>
internal static class ProblemTitles
{
    /// <summary>Such as "Nothing here" for a page that opens with <c># FR7001 nothing here</c>.</summary>
    public static string Of(string code)
    {
        var page = MessagePages.Find(code);
        if (page is null) return code;
        var heading = page.AsSpan()[..page.IndexOf('\n')].TrimEnd();
        var title = heading[(heading.IndexOf(code, StringComparison.Ordinal) + code.Length)..].Trim();
        return title.IsEmpty ? code : $"{char.ToUpperInvariant(title[0])}{title[1..]}";
    }
}
