namespace FindingRules.Model.Text;

/// <summary>A run of UTF-16 code units: where it starts, counted from 0, and how many it has.</summary>
public readonly record struct TextSpan(int Start, int Length)
{
    public int End => Start + Length;

    public static TextSpan Between(int start, int end) => new(start, Math.Max(0, end - start));

    /// <summary>The smallest span that covers both.</summary>
    public TextSpan Through(TextSpan other) => Between(Math.Min(Start, other.Start), Math.Max(End, other.End));
}
