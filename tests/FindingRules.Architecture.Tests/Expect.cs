using Xunit;

namespace FindingRules.Architecture.Tests;

internal static class Expect
{
    /// <summary>Fails with every offender on a line of its own, where the list of the test library would be cut short.</summary>
    public static void None<T>(IEnumerable<T> offenders)
    {
        var lines = offenders.Select(o => $"{o}").ToArray();
        if (lines.Length > 0) Assert.Fail($"{lines.Length} found:\n{string.Join('\n', lines)}");
    }
}
