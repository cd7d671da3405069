using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>Measurements and how far they are from their limits, for a line about one subject: what is of another is named.</summary>
internal sealed class MeasureDistances(Decided decided)
{
    private const string Earlier = "earlier ";

    public string Of(string subject, IEnumerable<Evidence> measures)
    {
        var told = new Once<string>();
        foreach (var same in measures.GroupBy(m => m.Statement))
            foreach (var compared in Comparisons(same))
                told.Add(Distance(subject, compared));
        return told.Count == 0 ? "within the precision of measurement" : string.Join("; ", told.ToImmutable());
    }

    /// <summary>Of several lesions each is compared for itself; the limit is told with the first measure of a comparison.</summary>
    private static List<List<Evidence>> Comparisons(IEnumerable<Evidence> ofStatement)
    {
        var compared = new List<List<Evidence>>();
        foreach (var measure in ofStatement.Distinct())
            if (compared.Count == 0 || measure.Threshold is not null) compared.Add([measure]);
            else compared[^1].Add(measure);
        return compared;
    }

    private string Distance(string subject, List<Evidence> measures)
    {
        // Its own first: what is called the other side is the other side of that.
        var values = string.Join(", ", measures.OrderBy(m => m.Subject == subject ? 0 : 1).Select(m =>
            $"{Name(subject, m, measures.Exists(o => o.Finding == m.Finding && o.Subject == subject))} {m.Value}"));
        return measures[0] is not { Threshold: { } threshold } bound ? values
            : bound.Distance is not { } distance ? $"{values}, against the limit of {threshold}"
            : measures.Count == 1 ? $"{values} is {distance} from {threshold}"
            : $"{values}: {distance} from the limit of {threshold}";
    }

    private string Name(string subject, Evidence measure, bool isBesideOwn)
    {
        var isEarlier = measure.Subject.StartsWith(Earlier, StringComparison.Ordinal);
        var key = isEarlier ? measure.Subject[Earlier.Length..] : measure.Subject;
        var title = (isEarlier ? Earlier : "") + decided.TitleOf(key, measure.Finding);
        if (Naming.IsOf(subject, key) || key == Subject.Study.Key || decided.Find(key) is not { } other) return title;
        if (!IsOtherSide(other, decided.Find(subject))) return $"{title} of the {other.Title}";
        return isBesideOwn && !isEarlier ? "other side" : $"{title} of the other side";
    }

    private static bool IsOtherSide(Subject other, Subject? own) =>
        own is not null && other.Lesion is null && other.Structure == own.Structure
        && other.Side is Side.Left or Side.Right && own.Side == other.Side.Other();
}
