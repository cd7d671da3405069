using System.Globalization;

namespace FindingRules.Benchmarks.Growth;

/// <summary>From quantities to places between <paramref name="From"/> and <paramref name="To"/>, and the marks between.</summary>
internal sealed record Axis(bool IsLogarithmic, double Low, double High, double From, double To)
{
    private const double ManyTens = 500;

    public static Axis Over(IEnumerable<double> values, bool isLogarithmic, double from, double to)
    {
        var all = values.ToList();
        if (!isLogarithmic)
        {
            var step = StepFor(all.Max());
            return new Axis(false, 0, Math.Ceiling(all.Max() / step) * step, from, to);
        }
        return all.Max() / all.Min() > ManyTens
            ? new Axis(true, RoundDown(all.Min(), [1]), RoundUp(all.Max(), [1, 10]), from, to)
            : new Axis(true, RoundDown(all.Min(), [5, 2, 1]), RoundUp(all.Max(), [1, 2, 5, 10]), from, to);
    }

    /// <summary>In between, too, where they are few.</summary>
    public IEnumerable<double> Marks
    {
        get
        {
            if (!IsLogarithmic)
            {
                var step = StepFor(High);
                for (var i = 0; i * step <= High * 1.0001; i++) yield return i * step;
                yield break;
            }
            int[] digits = High / Low > ManyTens ? [1] : [1, 2, 5];
            for (var ten = Math.Pow(10, Math.Floor(Math.Log10(Low))); ten <= High; ten *= 10)
                foreach (var digit in digits)
                    if (digit * ten >= Low * 0.999 && digit * ten <= High * 1.001)
                        yield return digit * ten;
        }
    }

    public double At(double value) => From + ((To - From) * (Share(value) - Share(Low)) / (Share(High) - Share(Low)));

    public static string Text(double value) => value.ToString(value < 1 ? "0.##" : "#,0.##", CultureInfo.InvariantCulture);

    private double Share(double value) => IsLogarithmic ? Math.Log10(value) : value;

    private static double StepFor(double most)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(most / 4)));
        return new[] { 1, 2, 5, 10 }.Select(d => d * ten).First(s => most / s <= 8);
    }

    private static double RoundDown(double value, int[] digits) => digits.Select(d => d * TenOf(value)).First(d => d <= value * 1.001);

    private static double RoundUp(double value, int[] digits) => digits.Select(d => d * TenOf(value)).First(d => d >= value * 0.999);

    private static double TenOf(double value) => Math.Pow(10, Math.Floor(Math.Log10(value)));
}
