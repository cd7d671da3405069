using System.Text;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>Fills the places of a sentence with what was found at an instance.</summary>
internal sealed class WordingFiller(Examination examination)
{
    /// <summary>What a place says that has nothing to be filled with.</summary>
    public const string NotStated = "not stated";

    public string Fill(Wording wording, int instance)
    {
        var text = new StringBuilder();
        foreach (var part in wording.Parts)
            text.Append(part switch
            {
                WordingText plain => plain.Text,
                WordingPlace place => Fill(place, instance),
                _ => throw new System.Diagnostics.UnreachableException(),
            });
        if (text.Length > 0) text[0] = char.ToUpperInvariant(text[0]);
        return text.ToString();
    }

    private string Fill(WordingPlace place, int instance) => Text(place.Source, instance) switch
    {
        { } found => place.Before + found + place.After,
        null when place.IsOptional => "",
        null => NotStated,
    };

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

    private string? Finding(Instance at, int instance, Finding finding) =>
        at.Subject.Structure?.Kind.Findings.GetValueOrDefault(finding.Name) == finding
            ? Shown(examination.ValueAt(instance, examination.Network.Slots[finding]))
            : null;

    private string? Derived(DerivedMeasure measure, Instance at, int instance)
    {
        if (!measure.Scope.Covers(at.Subject.Structure)) return null;
        return examination.Network.Derived[measure].ValueAt(examination, instance) is { } value ? Shown(value, measure.Show) : null;
    }

    private string? Topic(Topic topic, Instance at)
    {
        var instance = topic.Scope.IsStudy ? examination[0] : topic.IsPerStructure ? examination[at.Whole] : at;
        if (!instance.IsPresent) return null;
        for (var i = 0; i < instance.Topics.Length; i++)
            if (instance.Plan.Topics[i].Topic == topic)
                return instance.Topics[i].Status == TopicStatus.Published ? topic.Values[instance.Topics[i].Value].Title : null;
        return null;
    }

    private static string? Shown(FindingValue? value) => value switch
    {
        null or NotAssessableValue => null,
        ChoiceValue choice => choice.Value.Replace('-', ' '),
        MeasuredValue { IsFromNormal: true } measured =>
            $"normal, {Shown(measured.Interval, inBase => Quantity.FromBase(inBase, measured.Unit).ToString())}",
        _ => value.ToString(),
    };

    /// <summary>Such as 55 %, between 2 mm and 3 mm, less than 2 mm.</summary>
    private static string? Shown(Interval interval, Func<Rational, string> show) => (interval.Low, interval.High) switch
    {
        ({ } low, { } high) when low == high => show(low),
        ({ } low, { } high) => $"{show(low)} to {show(high)}",
        ({ } low, null) => $"{(interval.LowClosed ? "at least" : "more than")} {show(low)}",
        (null, { } high) => $"{(interval.HighClosed ? "at most" : "less than")} {show(high)}",
        _ => null,
    };
}
