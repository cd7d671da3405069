using Microsoft.Extensions.DependencyInjection;

namespace FindingRules.Service.Tests.Hosting;

/// <summary>A clock that shows another day and goes on from there.</summary>
internal sealed class SetClock(DateTimeOffset start) : TimeProvider
{
    private readonly TimeSpan _apart = start - DateTimeOffset.UtcNow;

    public override DateTimeOffset GetUtcNow() => DateTimeOffset.UtcNow + _apart;
}

internal static class ClockSetting
{
    public static void AddClock(this IServiceCollection services, TimeProvider clock) => services.AddSingleton(clock);
}
