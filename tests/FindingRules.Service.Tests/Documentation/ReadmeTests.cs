using System.Text.RegularExpressions;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Documentation;

/// <summary>The calls that README shows are answered.</summary>
public sealed partial class ReadmeTests
{
    [Fact]
    public async Task Every_shown_call_is_answered()
    {
        var lines = FencedBlock.The("sh service").Text.TrimEnd().Split('\n');
        var served = lines[0].Split(' ')[^1];
        await using var service = await RunningService.StartAsync(DiskWith(served));

        Assert.True(lines.Length > 1);
        foreach (var line in lines[1..])
        {
            var call = Call().Match(line);
            Assert.True(call.Success, line);
            using var answer = call.Groups["file"].Success
                ? await service.PostAsync(Repository.ReadText(call.Groups["file"].Value.Split('/')), call.Groups["path"].Value)
                : await service.Client.GetAsync(call.Groups["path"].Value);
            Assert.True(answer.IsSuccessStatusCode, $"{line}: {answer.StatusCode}");
        }
    }

    private static PackDisk DiskWith(string folder)
    {
        var disk = new PackDisk();
        foreach (var path in Repository.Files(folder, "*.yaml"))
        {
            var copy = disk.PathOf("served", Path.GetRelativePath(Repository.PathOf(folder), path));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(path, copy);
        }
        return disk;
    }

    [GeneratedRegex($"^curl -s {ServiceOptions.DefaultUrl}(?<path>/\\S+)( -H 'Content-Type: application/json' -d @(?<file>\\S+))?$")]
    private static partial Regex Call();
}
