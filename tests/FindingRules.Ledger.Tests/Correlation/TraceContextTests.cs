using System.Text.Json;
using FindingRules.Ledger.Correlation;
using Xunit;

namespace FindingRules.Ledger.Tests.Correlation;

public sealed class TraceContextTests
{
    private const string Parent = "00-12345678901234567890123456789012-1234567890123456-01";

    /// <summary>Source: w3c/trace-context at acab820.</summary>
    [VectorFact]
    public void Published_headers_go_on_or_begin_anew_as_published()
    {
        using var vectors = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(VectorFactAttribute.Folder!, "traceparent-vectors.json")));
        var cases = vectors.RootElement.GetProperty("cases").EnumerateArray().ToArray();
        Assert.True(cases.Length > 30);
        foreach (var vector in cases)
        {
            var headers = vector.GetProperty("headers").EnumerateArray()
                .ToLookup(h => h[0].GetString()!, h => h[1].GetString()!, StringComparer.OrdinalIgnoreCase);
            var context = TraceContext.Read([.. headers["traceparent"]], [.. headers["tracestate"]]);
            Assert.Equal(vector.GetProperty("expect").GetString() == "continue", context is not null);
            if (context is not null) Assert.Equal("12345678901234567890123456789012", context.Next().TraceId);
        }
    }

    [Fact]
    public void The_next_step_keeps_the_trace_and_has_an_id_of_its_own()
    {
        var context = TraceContext.Read([Parent], ["a=1"])!;
        var next = context.Next();
        Assert.Equal(Parent, context.TraceParent);
        Assert.StartsWith("00-12345678901234567890123456789012-", next.TraceParent, StringComparison.Ordinal);
        Assert.NotEqual(context.ParentId, next.ParentId);
        Assert.Equal("a=1", next.TraceStateHeader);
        Assert.NotNull(TraceContext.Read([TraceContext.Begin().TraceParent], []));
    }

    [Theory]
    [InlineData("a=1,b=2", "a=1,b=2")]
    [InlineData("a=1 , b=2,", "a=1,b=2")]
    [InlineData("0tenant@vendor=x y", "0tenant@vendor=x y")]
    [InlineData("a=1,a=2", "")]
    [InlineData("A=1", "")]
    [InlineData("a", "")]
    [InlineData("a=b=c", "")]
    [InlineData("a=", "")]
    public void A_state_is_taken_whole_or_not_at_all(string state, string expected) =>
        Assert.Equal(expected, TraceContext.Read([Parent], [state])!.TraceStateHeader);

    [Fact]
    public void A_state_with_too_many_entries_is_left_out()
    {
        var entries = Enumerable.Range(0, 33).Select(i => $"k{i}=1").ToArray();
        Assert.Equal(32, TraceContext.Read([Parent], entries[..32])!.State.Length);
        Assert.Empty(TraceContext.Read([Parent], entries)!.State);
    }
}
