using System.Text.RegularExpressions;

namespace FindingRules.Service.Hosting;

/// <summary>Says in the log where the service listens, and that it stops.</summary>
internal sealed partial class LifeLog(
    IServiceProvider services, IHostApplicationLifetime life, ServiceSettings settings, ILogger<LifeLog> log) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken)
    {
        life.ApplicationStarted.Register(Started);
        life.ApplicationStopping.Register(() => ServiceLog.Stopping(log, settings.Limits.StopMilliseconds));
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    private void Started()
    {
        var server = services.GetRequiredService<Microsoft.AspNetCore.Hosting.Server.IServer>();
        var addresses = server.Features.Get<Microsoft.AspNetCore.Hosting.Server.Features.IServerAddressesFeature>()?.Addresses ?? [];
        ServiceLog.Listening(log, string.Join(' ', addresses), $"{AnyHost().Replace(addresses.FirstOrDefault() ?? "", "localhost")}/");
    }

    // An address that stands for every one of the machine cannot be opened.
    [GeneratedRegex(@"(?<=:/{2})(?:\[::\]|0\.0\.0\.0|[*+])")]
    private static partial Regex AnyHost();
}
