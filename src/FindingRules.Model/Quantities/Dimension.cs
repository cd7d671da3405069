namespace FindingRules.Model.Quantities;

/// <summary>What a number measures, as powers of length, time in seconds, angle, and age in months.</summary>
public readonly record struct Dimension(int Length = 0, int Second = 0, int Angle = 0, int Month = 0)
{
    public static Dimension None => default;

    public static Dimension operator *(Dimension a, Dimension b) =>
        new(a.Length + b.Length, a.Second + b.Second, a.Angle + b.Angle, a.Month + b.Month);

    public static Dimension operator /(Dimension a, Dimension b) =>
        new(a.Length - b.Length, a.Second - b.Second, a.Angle - b.Angle, a.Month - b.Month);

    /// <summary>How a message names it: "a length", "an area", "a plain number".</summary>
    public string Title => this switch
    {
        { Length: 0, Second: 0, Angle: 0, Month: 0 } => "a plain number or share",
        { Length: 1, Second: 0, Angle: 0, Month: 0 } => "a length",
        { Length: 2, Second: 0, Angle: 0, Month: 0 } => "an area",
        { Length: 1, Second: -1, Angle: 0, Month: 0 } => "a velocity",
        { Length: 0, Second: 0, Angle: 1, Month: 0 } => "an angle",
        { Length: 0, Second: 0, Angle: 0, Month: 1 } => "an age",
        _ => $"a quantity of length^{Length} second^{Second} angle^{Angle} month^{Month}",
    };
}
