using FindingRules.Model.Quantities;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>
/// A floating-point number near a fraction, to find one's place quickly. It decides nothing: numbers that lie too near
/// each other are compared as fractions.
/// </summary>
internal static class NearestDouble
{
    // Numerator, denominator and quotient are each rounded once, by less than 2^-52 of their size.
    private const double Doubt = 1e-14;

    public static double Of(Rational value) => (double)value.Numerator / (double)value.Denominator;

    public static bool MayBeEqual(double a, double b) => !(Math.Abs(a - b) > Doubt * Math.Max(Math.Abs(a), Math.Abs(b)));
}
