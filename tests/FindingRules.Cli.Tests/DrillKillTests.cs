using System.Diagnostics;
using System.Globalization;
using FindingRules.Drill;
using Xunit;

namespace FindingRules.Cli.Tests;

/// <summary>
/// A learner's process is killed while it answers and writes: the progress is then that of some answer, whole.
/// <c>FINDINGRULES_KILLS</c> says how many times.
/// </summary>
public sealed class DrillKillTests
{
    private const int FewKills = 3;
    private static readonly int Kills =
        Math.Min(20, int.Parse(Environment.GetEnvironmentVariable("FINDINGRULES_KILLS") ?? $"{FewKills}", CultureInfo.InvariantCulture));

    [Fact]
    public void Whenever_it_is_killed_the_progress_is_whole_and_gone_on_with()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "p.json");
        var answered = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            Run(path, TimeSpan.FromMilliseconds(kill * 7 % 60));
            var (progress, why) = DrillProgress.Read(File.ReadAllBytes(path));
            Assert.True(progress is not null, why);
            var now = progress.Questions.Values.Sum(c => c.Right + c.Wrong);
            Assert.InRange(now, answered + 1, int.MaxValue);
            answered = now;
        }
        var after = CommandRun.WithInput("1\n\n", "drill", CommandRun.ExamplePack, "--seed", "7", "--count", "1", "--progress", path);
        Assert.Equal((ExitCode.Fine, ""), (after.Code, after.Error));
    }

    /// <summary>Answers without end, and is killed so long after an answer was kept.</summary>
    private static void Run(string path, TimeSpan after)
    {
        var before = File.Exists(path) ? File.GetLastWriteTimeUtc(path) : DateTime.MinValue;
        var start = new ProcessStartInfo("dotnet") { RedirectStandardInput = true, RedirectStandardOutput = true };
        string[] words =
        [
            typeof(ExitCode).Assembly.Location, "drill", CommandRun.ExamplePack, "--seed", "7", "--count", "500", "--progress", path,
        ];
        foreach (var word in words) start.ArgumentList.Add(word);
        using var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        for (var i = 0; i < 200; i++) process.StandardInput.Write("1\n\n");
        process.StandardInput.Flush();
        var patience = Stopwatch.StartNew();
        while (!process.HasExited && patience.Elapsed < TimeSpan.FromSeconds(60)
            && !(File.Exists(path) && File.GetLastWriteTimeUtc(path) > before))
            Thread.Sleep(1);
        Thread.Sleep(after);
        if (!process.HasExited) process.Kill();
        process.WaitForExit();
    }
}
