using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>What could be different: each finding in reach with the values worth trying.</summary>
internal sealed class ChangeSpace
{
    public ChangeSpace(Examination examination, Study study, Reach reach)
    {
        var normal = Normals(study);
        var cells = reach.Tests
            .Select(t => (Slot: t.Key, Cells: CellsOf(
                examination, t.Key, [.. t.Value], normal.Contains((t.Key.IsEarlier, t.Key.Subject.Whole)))))
            .Where(t => !t.Cells.IsEmpty).ToList();
        Slots = [.. cells.Select(c => c.Slot)];
        Cells = [.. cells.Select(c => c.Cells)];
        // Whether something was assessed is never unknown, so leaving such a finding open shows nothing; and where normals
        // are filled in, one finding of a subject decides whether the others are known.
        var asked = reach.Tests.Where(t => t.Value.Exists(x => x is IsKnown)).Select(t => t.Key).ToHashSet();
        IsFree =
        [
            .. Slots.Select(s => !asked.Contains(s) && !(normal.Contains((s.IsEarlier, s.Subject.Whole))
                && asked.Any(a => a.IsEarlier == s.IsEarlier && a.Subject.Whole == s.Subject.Whole))
                && !reach.Wholes.Contains((s.IsEarlier, s.Subject.Whole))),
        ];
    }

    public ImmutableArray<FindingSlot> Slots { get; }

    public ImmutableArray<ImmutableArray<Cell>> Cells { get; }

    /// <summary>Taken for unknown, it can only make things less settled.</summary>
    public ImmutableArray<bool> IsFree { get; }

    /// <summary>What is known of a finding now.</summary>
    public static FindingValue? ValueOf(Examination examination, FindingSlot slot) =>
        examination.ValueAt(IndexOf(examination, slot), examination.Network.Slots[slot.Finding]);

    public static int IndexOf(Examination examination, FindingSlot slot) =>
        slot.IsEarlier ? EarlierIndex(examination, slot.Subject) : Trials.Find(examination, slot.Subject);

    private static int EarlierIndex(Examination examination, Subject subject)
    {
        for (var i = 1; i < examination.Count; i++)
            if (!examination[i].IsPresent && examination[i].Subject == subject && examination[i].Values.Any(v => v is not null))
                return i;
        return -1;
    }

    private static ImmutableArray<Cell> CellsOf(
        Examination examination, FindingSlot slot, ImmutableArray<SlotTest> tests, bool isSentAsNormal)
    {
        var now = ValueOf(examination, slot);
        var cells = Changing.Cells.Others(slot.Finding.Type, tests, now is NotAssessableValue ? null : now, isSentAsNormal);
        if (!tests.Any(t => t is IsKnown)) return cells;
        if (now is not null && !isSentAsNormal) cells = cells.Add(new Cell(null, "not sent", "not sent"));
        return now is NotAssessableValue
            ? cells
            : cells.Add(new Cell(new NotAssessableValue(), NotAssessableValue.Word, "not assessable"));
    }

    public static HashSet<(bool, Subject)> Normals(Study study) =>
    [
        .. study.Subjects.Where(s => s.IsNormal).Select(s => (false, new Subject(s.Structure, s.Side, null))),
        .. (study.Earlier ?? []).Where(s => s.IsNormal).Select(s => (true, new Subject(s.Structure, s.Side, null))),
    ];
}
