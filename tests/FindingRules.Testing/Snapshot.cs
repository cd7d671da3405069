using System.Runtime.CompilerServices;
using System.Text;

namespace FindingRules.Testing;

/// <summary>
/// Compares a text that people read with the one that was accepted before. The accepted text lies beside the test as
/// <c>Class.Method[.variant].verified.txt</c>; where they differ, <c>….received.txt</c> is written and the test fails.
/// <c>ACCEPT_SNAPSHOTS=1</c> accepts what comes, for review like code.
/// </summary>
public static class Snapshot
{
    public static void Match(
        string actual, string? variant = null, [CallerFilePath] string file = "", [CallerMemberName] string method = "")
    {
        var source = FindSource(file);
        var name = $"{Path.GetFileNameWithoutExtension(source)}.{method}{(variant is null ? "" : $".{variant}")}";
        var stem = Path.Combine(Path.GetDirectoryName(source)!, name);
        var received = Normalise(actual);
        var verified = File.Exists($"{stem}.verified.txt") ? Normalise(File.ReadAllText($"{stem}.verified.txt")) : null;
        if (received == verified)
        {
            File.Delete($"{stem}.received.txt");
            return;
        }
        if (Environment.GetEnvironmentVariable("ACCEPT_SNAPSHOTS") == "1")
        {
            Write($"{stem}.verified.txt", received);
            File.Delete($"{stem}.received.txt");
            return;
        }
        Write($"{stem}.received.txt", received);
        throw new SnapshotException(
            $"{Repository.Relative(stem)}.verified.txt {(verified is null ? "is not there" : "differs")}; "
            + $"ACCEPT_SNAPSHOTS=1 accepts what came.\n{Difference(verified ?? "", received)}");
    }

    /// <summary>Lines that only the first has with -, lines that only the second has with +, two lines around them.</summary>
    private static string Difference(string before, string after)
    {
        var old = before.Split('\n');
        var now = after.Split('\n');
        var head = 0;
        while (head < old.Length && head < now.Length && old[head] == now[head]) head++;
        var tail = 0;
        while (tail < old.Length - head && tail < now.Length - head && old[^(tail + 1)] == now[^(tail + 1)]) tail++;
        const int around = 2;
        string[] lines =
        [
            $"@ line {head + 1}",
            .. old[Math.Max(0, head - around)..head].Select(l => "  " + l),
            .. old[head..^tail].Select(l => "- " + l),
            .. now[head..^tail].Select(l => "+ " + l),
            .. now[^tail..].Take(around).Select(l => "  " + l),
        ];
        return string.Join('\n', lines);
    }

    // A deterministic build rewrites the folders of the caller's path, so only its end is looked for in the checkout.
    private static string FindSource(string callerPath)
    {
        var parts = callerPath.Split('/', '\\');
        var found = Repository.Files("tests", parts[^1]).ToArray();
        if (found.Length == 0) throw new InvalidOperationException($"There is no {parts[^1]} below tests.");
        return found.MaxBy(path => SharedEnd(path.Split('/', '\\'), parts))!;
    }

    private static int SharedEnd(string[] one, string[] other) =>
        one.Reverse().Zip(other.Reverse()).TakeWhile(pair => pair.First == pair.Second).Count();

    private static string Normalise(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal).TrimEnd('\n') + "\n";

    private static void Write(string path, string text) => File.WriteAllText(path, text, new UTF8Encoding(false));
}

public sealed class SnapshotException(string message) : Exception(message);
