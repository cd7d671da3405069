using System.Text;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>Fills the places of a sentence with what was found at an instance.</summary>
internal sealed class WordingFiller(Examination examination)
{
    /// <summary>What a place says that has nothing to be filled with.</summary>
    public const string NotStated = "not stated";

    private readonly StringBuilder _text = new();

    public string Fill(Wording wording, int instance)
    {
        if (wording.Parts is [WordingText { Text: [(< 'a' or > 'z') and < '\u0080', ..] whole }]) return whole;
        _text.Clear();
        foreach (var part in wording.Parts)
            switch (part)
            {
                case WordingText plain:
                    _text.Append(plain.Text);
                    break;
                case WordingPlace place:
                    Fill(place, instance);
                    break;
                default:
                    throw new System.Diagnostics.UnreachableException();
            }
        if (_text.Length > 0) _text[0] = char.ToUpperInvariant(_text[0]);
        return _text.ToString();
    }

    private void Fill(WordingPlace place, int instance)
    {
        if (Text(place.Source, instance) is { } found) _text.Append(place.Before).Append(found).Append(place.After);
        else if (!place.IsOptional) _text.Append(NotStated);
    }

    private string? Text(WordingSource source, int instance)
    {
        var at = examination[instance];
        return source switch
        {
            SubjectSource => at.Subject.Title,
            FactSource fact => Shown(examination.ValueAt(0, examination.Network.Slots[fact.Fact])),
            FindingSource { Finding: var finding } => Finding(at, instance, finding),
            DerivedSource { Measure: var measure } => Derived(measure, at, instance),
            TopicSource { Topic: var topic } => Topic(topic, at),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private string? Finding(Instance at, int instance, Finding finding)
    {
        if (at.Structure is null) return null;
        foreach (var known in at.Plan.Findings)
            if (known.Finding == finding)
                return Shown(examination.ValueAt(instance, known.Slot));
        return null;
    }

    private string? Derived(DerivedMeasure measure, Instance at, int instance)
    {
        if (!measure.Scope.Covers(at.Subject.Structure)) return null;
        return examination.Network.Derived[measure].ValueAt(examination, instance) is { } value
            && (value.Low ?? value.High) is not null
            ? Explaining.Shown.Interval(value, measure.Show)
            : null;
    }

    private string? Topic(Topic topic, Instance at)
    {
        var instance = topic.Scope.IsStudy ? examination[0] : topic.IsPerStructure ? examination[at.Whole] : at;
        if (!instance.IsPresent) return null;
        for (var i = 0; i < instance.Plan.Topics.Length; i++)
            if (instance.Plan.Topics[i].Topic == topic)
                return instance.TopicAt(i) is { Status: TopicStatus.Published } state ? topic.Values[state.Value].Title : null;
        return null;
    }

    private static string? Shown(FindingValue? value) => value switch
    {
        null or NotAssessableValue => null,
        ChoiceValue choice => choice.Value.Replace('-', ' '),
        MeasuredValue { IsFromNormal: true } measured =>
            $"normal, {Explaining.Shown.Interval(measured.Interval, measured.Unit)}",
        _ => value.ToString(),
    };
}
