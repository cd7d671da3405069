namespace FindingRules.Model.Truths;

/// <summary>
/// The three values of strong Kleene logic. Source: S. C. Kleene, Introduction to Metamathematics, section 64.
/// The order makes <c>and</c> the minimum and <c>or</c> the maximum.
/// </summary>
public enum Truth : byte
{
    False = 0,
    Unknown = 1,
    True = 2,
}

public static class Kleene
{
    public static Truth And(Truth left, Truth right) => left < right ? left : right;

    public static Truth Or(Truth left, Truth right) => left > right ? left : right;

    public static Truth Not(Truth truth) => (Truth)(2 - (int)truth);

    public static Truth Of(bool known) => known ? Truth.True : Truth.False;

    /// <summary>At least <paramref name="needed"/> of the parts are true, seen from what is known of each.</summary>
    public static Truth AtLeast(int needed, int countTrue, int countUnknown) =>
        countTrue >= needed ? Truth.True : countTrue + countUnknown >= needed ? Truth.Unknown : Truth.False;
}
