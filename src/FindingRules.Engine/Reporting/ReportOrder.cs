using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>Present instances in the order in which the study's protocols scan them; the others follow by name, the study last.</summary>
internal static class ReportOrder
{
    private const int NotScanned = int.MaxValue;

    public static ImmutableArray<int> Of(Examination examination, Study study)
    {
        var order = new int[examination.Count];
        var count = 0;
        for (var i = 0; i < examination.Count; i++)
            if (examination[i].IsPresent)
                order[count++] = i;
        order.AsSpan(0, count).Sort(new ByRank(examination, Ranks(examination, study)));
        return [.. order.AsSpan(0, count)];
    }

    /// <summary>The study's protocols by name, then side.</summary>
    public static ImmutableArray<ProtocolUse> Protocols(Study study) => study.Protocols.Length < 2
        ? study.Protocols
        : study.Protocols.Sort(static (a, b) =>
            string.CompareOrdinal(a.Protocol.Name, b.Protocol.Name) is var byName && byName != 0 ? byName : a.Side - b.Side);

    /// <summary>By instance: when it is scanned.</summary>
    private static int[] Ranks(Examination examination, Study study)
    {
        var ranks = new int[examination.Count];
        Array.Fill(ranks, NotScanned);
        var next = 0;
        foreach (var use in Protocols(study))
        {
            Rank(use.Protocol.Required, use.Side);
            Rank(use.Protocol.AsIndicated, use.Side);
        }
        return ranks;

        void Rank(ImmutableArray<ProtocolItem> items, Side side)
        {
            foreach (var item in items)
                if (examination.Find(item.Structure, item.Structure.IsPaired ? side : Side.None) is var site and >= 0)
                    ranks[site] = Math.Min(ranks[site], next++);
        }
    }

    private readonly struct ByRank(Examination examination, int[] ranks) : IComparer<int>
    {
        public int Compare(int x, int y)
        {
            var (a, b) = (examination[x], examination[y]);
            if (ranks[a.Whole] is var first && ranks[b.Whole] is var second && first != second) return first.CompareTo(second);
            if (a.Structure is null != b.Structure is null) return a.Structure is null ? 1 : -1;
            return a.Subject.CompareTo(b.Subject);
        }
    }
}
