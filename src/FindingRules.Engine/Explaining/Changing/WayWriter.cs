using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Explanations;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>Ways in words, with what the reading would then say: the changed study is read anew for it.</summary>
internal sealed class WayWriter(RuleNetwork network, Study study, Examination examination, Reading reading)
{
    private readonly ImmutableArray<string> _now = SaidLines.Of(network, reading);
    private readonly StudyPlaces _places = new(study);

    public (ImmutableArray<Way> Ways, Search Search) Search(Goal goal, SearchLimits limits)
    {
        var search = new WaySearch(new Trials(network, study), examination, goal, limits);
        var report = search.Run();
        return ([.. search.Found.Select(Write)], report);
    }

    private Way Write(ImmutableArray<(FindingSlot Slot, Cell Cell)> changes)
    {
        var (said, gone) = Differences(changes);
        return new Way([.. changes.OrderBy(c => c.Slot).Select(c => Write(c.Slot, c.Cell))], said, gone);
    }

    /// <summary>What the reading of the changed study says more than that of the study, and what it does not say.</summary>
    public (ImmutableArray<string> Said, ImmutableArray<string> Gone) Differences(IEnumerable<(FindingSlot Slot, Cell Cell)> changes)
    {
        var changed = changes.Aggregate(study, (s, c) => StudyEdit.With(s, c.Slot, c.Cell.Value));
        var then = SaidLines.Of(network, Evaluator.Evaluate(network, changed));
        return ([.. then.Except(_now)], [.. _now.Except(then)]);
    }

    private Change Write(FindingSlot slot, Cell cell)
    {
        var now = ChangeSpace.ValueOf(examination, slot);
        var origin = now switch
        {
            null => "not-sent",
            NotAssessableValue => "not-assessable",
            _ => IsFilled(slot) ? "normal" : "sent",
        };
        var place = origin is "not-sent" or "normal" ? null : _places.Of(slot.IsEarlier, slot.Subject, slot.Finding);
        return new Change(
            slot.Key, slot.Subject.Title + (slot.IsEarlier ? " in the earlier study" : ""), slot.Finding.Name, slot.Finding.Title,
            now is null or NotAssessableValue ? null : ValueWords.Of(now), origin, place, cell.To, cell.Range);
    }

    private bool IsFilled(FindingSlot slot)
    {
        var index = ChangeSpace.IndexOf(examination, slot);
        return index >= 0 && examination[index].IsFilled is { } filled && filled[examination.Network.Slots[slot.Finding]];
    }
}
