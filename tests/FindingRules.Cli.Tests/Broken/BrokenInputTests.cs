using System.Diagnostics;
using System.Text;
using FindingRules.Model.Packs;
using FindingRules.Testing;
using FindingRules.Testing.Broken;
using Xunit;

namespace FindingRules.Cli.Tests.Broken;

/// <summary>
/// The command as its own process: what is wrong with a pack or a study ends with code 3 and a place, never with a
/// crash, and nothing that looks like a reading is written.
/// </summary>
public sealed class BrokenInputTests : IDisposable
{
    private const int WrongInput = 3;
    private readonly string _folder = Directory.CreateTempSubdirectory("findingrules-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public static TheoryData<string> PackNames =>
        [.. Sample(BrokenPacks.ByDamage.Values.Select(make => make().Last().Name), 6)];

    public static TheoryData<string> StudyNames =>
        [.. Sample(BrokenStudies.ByDamage.Values.Select(make => make().Last().Name), 6)];

    [Theory]
    [MemberData(nameof(PackNames))]
    public void A_broken_pack_ends_with_code_3(string name)
    {
        var folder = Write(BrokenPacks.All.First(p => p.Name == name).Files);
        var (code, output, messages) = Run("review", folder);
        Assert.Equal(WrongInput, code);
        Assert.Matches(@":\d+:\d+\s+error\s+FR\d{4}", output + messages);
        Assert.DoesNotContain("   at FindingRules", output + messages, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(StudyNames))]
    public void A_broken_study_ends_with_code_3(string name) =>
        AssertRefused(Encoding.UTF8.GetBytes(BrokenStudies.All.First(s => s.Name == name).Text));

    [Theory]
    [InlineData("FF")]
    [InlineData("7B22737475647922C3287D")]
    [InlineData("7B227374756479223A22EDA080227D")]
    [InlineData("FFFE7B0022007300")]
    [InlineData("00")]
    public void Bytes_that_are_no_text_end_with_code_3(string bytes) => AssertRefused(Convert.FromHexString(bytes));

    [Fact]
    public void The_whole_pack_and_study_end_with_code_0()
    {
        var study = Path.Combine(_folder, "study.json");
        File.WriteAllText(study, BrokenStudy.Whole);
        var (code, output, messages) = Run("read", Write(ExamplePack.Plain.Files), study);
        Assert.True(code == 0, $"{code}\n{messages}");
        Assert.Contains("CUFF-010", output, StringComparison.Ordinal);
    }

    private void AssertRefused(byte[] bytes)
    {
        var study = Path.Combine(_folder, "study.json");
        File.WriteAllBytes(study, bytes);
        var (code, output, messages) = Run("read", Write(ExamplePack.Plain.Files), study);
        Assert.Equal(WrongInput, code);
        Assert.Matches(@"error\s+FR\d{4}", messages);
        Assert.DoesNotContain("   at FindingRules", messages, StringComparison.Ordinal);
        Assert.DoesNotContain("CUFF-", output, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Sample(IEnumerable<string> names, int count)
    {
        var all = names.ToArray();
        return Enumerable.Range(0, count).Select(i => all[i * all.Length / count]);
    }

    private string Write(IEnumerable<PackFile> files)
    {
        var folder = Path.Combine(_folder, "pack");
        Directory.CreateDirectory(folder);
        foreach (var file in files)
        {
            var path = Path.Combine(folder, file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, file.Bytes.ToArray());
        }
        return folder;
    }

    private static (int Code, string Output, string Messages) Run(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "FindingRules.Cli.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var messages = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, messages.Result);
    }
}
