using FindingRules.Model.Studies;

namespace FindingRules.Engine.Explaining;

/// <summary>A value as a person reads it.</summary>
internal static class ValueWords
{
    public static string Of(FindingValue value) => value switch
    {
        ChoiceValue choice => choice.Value.Replace('-', ' '),
        MeasuredValue { IsFromNormal: true } measured => Shown.Interval(measured.Interval, measured.Unit),
        _ => value.ToString()!,
    };
}
