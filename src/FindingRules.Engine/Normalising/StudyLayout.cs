using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Normalising;

/// <summary>
/// A study in, its layout against a network out: subjects in canonical order, normals filled in, lesions after their
/// structure.
/// </summary>
internal static class StudyLayout
{
    public static void LayOut(Examination examination, Study study)
    {
        AddStudy(examination, study.Facts, isPresent: true);
        AddSubjects(examination, study.Subjects, isPresent: true);
        foreach (var use in study.Protocols)
            foreach (var item in use.Protocol.Required)
                AddRequired(examination, examination.Network.PlanOf(item.Structure), item.Structure.IsPaired ? use.Side : Side.None);
        if (study.Earlier is not { } earlier) return;
        AddStudy(examination, study.EarlierFacts, isPresent: false);
        AddSubjects(examination, earlier, isPresent: false);
    }

    private static void AddRequired(Examination examination, StructurePlan plan, Side side)
    {
        if (!examination.Has(plan, side)) examination.Add(plan, side, null, isPresent: true);
    }

    private static void AddStudy(Examination examination, Findings facts, bool isPresent)
    {
        var study = examination.Add(examination.Network.StudyPlan, Side.None, null, isPresent, isEarlier: !isPresent);
        Place(examination.Network, study, facts);
    }

    private static void AddSubjects(Examination examination, ImmutableArray<StudySubject> subjects, bool isPresent)
    {
        foreach (ref readonly var subject in examination.Order.Of(subjects, examination.Network))
            AddSubject(examination, subject.Plan, subjects[subject.Index], isPresent);
    }

    private static void AddSubject(Examination examination, StructurePlan plan, StudySubject sent, bool isPresent)
    {
        var whole = examination.Add(plan, sent.Side, null, isPresent, isEarlier: !isPresent);
        Place(examination.Network, whole, sent.Findings);
        NormalFilling.Fill(sent, whole);
        whole.LesionCount = sent.Lesions.Length;
        foreach (var i in examination.Order.Of(sent.Lesions))
        {
            var lesion = examination.Add(plan, sent.Side, sent.Lesions[i].Id, isPresent, isEarlier: !isPresent);
            lesion.Inherit(whole);
            Place(examination.Network, lesion, sent.Lesions[i].Findings);
        }
    }

    /// <summary>Both the findings sent and those of the plan are in order of name, so that one walk finds every slot.</summary>
    private static void Place(RuleNetwork network, Instance instance, Findings findings)
    {
        var known = instance.Plan.Findings.AsSpan();
        // An array would look at the type of each value once more.
        var values = instance.Values.AsSpan();
        var at = 0;
        // Where a value lies is found out while it is at hand; what is filled in or inherited is looked at later.
        var direct = instance is { IsPresent: true, IsLesion: false } ? instance.Plan.Own.Planes.Direct : [];
        var cells = direct.Length == 0 ? [] : instance.Cells;
        cells.Fill(Cells.Unknown);
        instance.IsLocated = direct.Length > 0;
        foreach (var sent in findings.InOrder.AsSpan())
        {
            while (at < known.Length && !ReferenceEquals(known[at].Finding, sent.Finding)) at++;
            var slot = at < known.Length ? known[at].Slot : network.Slots[sent.Finding];
            values[slot] = sent.Value;
            if ((uint)slot < (uint)direct.Length && direct[slot] is { } test) cells[test.Number] = test.Test.CellsOf(sent.Value);
        }
    }
}
