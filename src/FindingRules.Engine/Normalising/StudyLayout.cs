using FindingRules.Engine.Compiling;
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
    public static Examination Of(RuleNetwork network, Study study)
    {
        var examination = new Examination(network);
        examination.Add(new Instance(Subject.Study, network.StudyPlan, isPresent: true)
        {
            Values = Place(network, study.Facts, new FindingValue?[network.StudyPlan.SlotCount]),
        });
        foreach (var subject in study.Subjects.OrderBy(s => s.Structure.Name, StringComparer.Ordinal).ThenBy(s => s.Side))
            AddSubject(examination, subject, isPresent: true);
        foreach (var use in study.Protocols)
            foreach (var item in use.Protocol.Required)
                AddRequired(examination, item.Structure, item.Structure.IsPaired ? use.Side : Side.None);
        if (study.Earlier is { } earlier) AddEarlier(examination, study, earlier);
        return examination;
    }

    private static void AddRequired(Examination examination, Structure structure, Side side)
    {
        if (examination.Has(structure, side)) return;
        var plan = examination.Network.PlanOf(structure);
        examination.Add(new Instance(new Subject(structure, side, null), plan, isPresent: true) { Whole = examination.Count });
    }

    private static void AddEarlier(Examination examination, Study study, IEnumerable<StudySubject> subjects)
    {
        var network = examination.Network;
        var facts = Place(network, study.EarlierFacts, new FindingValue?[network.StudyPlan.SlotCount]);
        examination.Add(
            new Instance(Subject.Study, network.StudyPlan, isPresent: false) { Values = facts, Whole = examination.Count },
            isEarlier: true);
        foreach (var subject in subjects) AddSubject(examination, subject, isPresent: false);
    }

    private static void AddSubject(Examination examination, StudySubject sent, bool isPresent)
    {
        var plan = examination.Network.PlanOf(sent.Structure);
        var whole = examination.Count;
        var key = new Subject(sent.Structure, sent.Side, null);
        var values = Place(examination.Network, sent.Findings, new FindingValue?[plan.SlotCount]);
        var filled = NormalFilling.Fill(examination.Network, sent, values);
        examination.Add(
            new Instance(key, plan, isPresent) { Values = values, IsFilled = filled, Whole = whole, LesionCount = sent.Lesions.Length },
            isEarlier: !isPresent);
        foreach (var lesion in sent.Lesions.OrderBy(l => l.Id, StringComparer.Ordinal))
        {
            examination.Add(
                new Instance(key with { Lesion = lesion.Id }, plan, isPresent)
                {
                    Values = Place(examination.Network, lesion.Findings, (FindingValue?[])values.Clone()),
                    IsFilled = filled,
                    Whole = whole,
                },
                isEarlier: !isPresent);
        }
    }

    private static FindingValue?[] Place(RuleNetwork network, Findings findings, FindingValue?[] values)
    {
        foreach (var sent in findings.ByName.Values) values[network.Slots[sent.Finding]] = sent.Value;
        return values;
    }
}
