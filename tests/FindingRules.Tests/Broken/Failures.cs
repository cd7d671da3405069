using FindingRules.Model.Messages;
using Xunit;

namespace FindingRules.Tests.Broken;

/// <summary>Gathers what went wrong with many inputs, so that one run shows them all.</summary>
internal static class Failures
{
    private const int Shown = 60;

    public static void None(IEnumerable<string?> failures)
    {
        var all = failures.ToArray();
        Assert.NotEmpty(all);
        var found = all.OfType<string>().ToArray();
        if (found.Length > 0) Assert.Fail($"{found.Length} of {all.Length}:\n{string.Join('\n', found.Take(Shown))}");
    }

    /// <summary>What the check says of the input, or that it threw; null where all is well.</summary>
    public static string? Of(string name, Func<string?> check)
    {
        try
        {
            return check() is { } failure ? $"{name}: {failure}" : null;
        }
        catch (Exception thrown)
        {
            var at = thrown.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains("FindingRules", StringComparison.Ordinal))?.Trim();
            return $"{name}: threw {thrown.GetType().Name}: {thrown.Message} {at}";
        }
    }

    /// <summary>A message whose place is not in its text, or that owns up to a bug.</summary>
    public static string? Misplaced(Message message)
    {
        var (start, end) = (message.Location.Span.Start, message.Location.Span.End);
        if (message.Code == "FR0001") return $"{message.Code} {message.Text}";
        if (message.Text.Length == 0) return $"{message.Code} says nothing";
        return start >= 0 && start <= end && end <= message.Location.Source.Content.Length
            ? null
            : $"{message.Code} points to {start}–{end} of {message.Location.Source.Content.Length} characters";
    }
}
