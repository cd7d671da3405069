using System.Text;

namespace FindingRules.Testing.Broken;

/// <summary>Files that stop before their end. Each file ends with a line of three dots, so none of these is whole.</summary>
internal static class PackCuts
{
    private const int Stride = 23;

    public static IEnumerable<BrokenPack> BetweenLines() =>
        from file in BrokenPack.Texts
        let lines = file.Value.Split('\n')
        from kept in Enumerable.Range(0, lines.Length - 2)
        select BrokenPack.Of($"cut after line {kept}", file.Key, string.Concat(lines.Take(kept).Select(l => l + "\n")));

    public static IEnumerable<BrokenPack> WithinLines() =>
        from file in BrokenPack.Texts
        let bytes = Encoding.UTF8.GetBytes(file.Value)
        from kept in Enumerable.Range(1, bytes.Length - 3).Where(n => n % Stride == 0 || n == bytes.Length - 3)
        select BrokenPack.Of($"cut after byte {kept}", file.Key, bytes[..kept]);
}
