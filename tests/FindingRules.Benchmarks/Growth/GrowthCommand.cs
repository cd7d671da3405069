using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace FindingRules.Benchmarks.Growth;

/// <summary>Measures how a study's time grows with one quantity after the other; draws each curve and writes the numbers down.</summary>
internal static class GrowthCommand
{
    public static int Run(string folder)
    {
        var text = new StringBuilder(
            "# Growth\n\nWritten, with the drawings, by\n`dotnet run -c Release --project tests/FindingRules.Benchmarks -- growth tests/FindingRules.Benchmarks/results`.\n"
            + "Microseconds for one study on one processor, the shortest of many measurements.\n"
            + $"{DateTime.UtcNow:yyyy-MM-dd}, {Environment.ProcessorCount} processors, {RuntimeInformation.RuntimeIdentifier}, {RuntimeInformation.FrameworkDescription}.\n");
        foreach (var chart in Sweeps.All())
        {
            File.WriteAllText(Path.Combine(folder, $"growth-{chart.Name}.svg"), SvgWriter.Write(chart));
            Append(text, chart);
        }
        File.WriteAllText(Path.Combine(folder, "growth.md"), text.ToString());
        return 0;
    }

    private static void Append(StringBuilder text, Chart chart)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## {chart.Title}\n\n![{chart.Title}](growth-{chart.Name}.svg)\n\n");
        text.Append(CultureInfo.InvariantCulture, $"| {chart.Across} | {string.Join(" | ", chart.Curves.Select(c => c.Name))} |\n");
        text.Append(CultureInfo.InvariantCulture, $"|---|{string.Concat(Enumerable.Repeat("---|", chart.Curves.Length))}\n");
        for (var i = 0; i < chart.Curves[0].Points.Length; i++)
            text.Append(CultureInfo.InvariantCulture,
                $"| {Axis.Text(chart.Curves[0].Points[i].X)} | {string.Join(" | ", chart.Curves.Select(c => c.Points[i].Y.ToString("#,0.0", CultureInfo.InvariantCulture)))} |\n");
    }
}
