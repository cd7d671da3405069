namespace FindingRules.Ledger.Tests.Stores;

/// <summary>A clock that stands where it is set; what measures time spans goes on.</summary>
internal sealed class SetClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
