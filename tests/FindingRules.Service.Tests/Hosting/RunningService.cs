using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Model.Messages;
using FindingRules.Testing.Stores;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FindingRules.Service.Tests.Hosting;

/// <summary>The real service on a free port of this machine, with a pack folder of its own.</summary>
internal sealed class RunningService : IAsyncDisposable
{
    public static readonly ServiceLimits Quick = new() { QuietMilliseconds = 30, LookMilliseconds = 100, StopMilliseconds = 2_000 };

    private readonly WebApplication _app;

    private RunningService(WebApplication app, PackDisk disk, CapturedLog log)
    {
        (_app, Disk, Log) = (app, disk, log);
        Client = new HttpClient(new SocketsHttpHandler { UseProxy = false, AllowAutoRedirect = false })
        {
            BaseAddress = new Uri(app.Urls.Single()),
            Timeout = TimeSpan.FromSeconds(30),
        };
    }

    public HttpClient Client { get; }

    public PackDisk Disk { get; }

    public CapturedLog Log { get; }

    /// <summary>Runs the service on the example pack, or on what the disk holds, and waits until a pack is in force.</summary>
    public static async Task<RunningService> StartAsync(
        PackDisk? disk = null, ServiceLimits? limits = null, Action<IServiceCollection>? change = null, bool mustBeReady = true,
        LedgerPlace? ledger = null, int? retentionDays = null, bool looksClosely = true)
    {
        disk ??= PackDisk.WithExample();
        var log = new CapturedLog();
        var messages = new MessageBag();
        var options = new ServiceOptions
        {
            PackFolders = [disk.Root],
            Urls = ["http://127.0.0.1:0"],
            Limits = limits ?? Quick,
            Ledger = ledger?.Name ?? ServiceOptions.NoLedger,
            LedgerKey = ledger?.KeyFile,
            RetentionDays = retentionDays,
        };
        var app = ServiceHost.Build(options, messages, builder =>
        {
            builder.Logging.AddProvider(log);
            if (looksClosely) builder.Logging.AddFilter<CapturedLog>("FindingRules", LogLevel.Debug);
            change?.Invoke(builder.Services);
        }) ?? throw new InvalidOperationException(string.Join('\n', messages.Sorted().Select(m => m.Text)));
        await app.StartAsync();
        var service = new RunningService(app, disk, log);
        if (mustBeReady) await service.UntilAsync(async () => (await service.Client.GetAsync("/readyz")).IsSuccessStatusCode);
        return service;
    }

    public async Task<JsonNode> GetJsonAsync(string address)
    {
        using var answer = await Client.GetAsync(address);
        var text = await answer.Content.ReadAsStringAsync();
        return JsonNode.Parse(text) ?? throw new InvalidOperationException($"{address} answered {text}");
    }

    public Task<HttpResponseMessage> PostAsync(string study, string address = "/v1/readings") =>
        PostAsync(Encoding.UTF8.GetBytes(study), "application/json", address);

    public async Task<HttpResponseMessage> PostAsync(byte[] body, string? contentType, string address = "/v1/readings")
    {
        using var content = new ByteArrayContent(body);
        if (contentType is not null) content.Headers.TryAddWithoutValidation("Content-Type", contentType);
        return await Client.PostAsync(address, content);
    }

    /// <summary>Waits for something that the service does on its own, at most ten seconds.</summary>
    public async Task UntilAsync(Func<Task<bool>> isSo)
    {
        var start = Stopwatch.GetTimestamp();
        while (!await isSo())
        {
            if (Stopwatch.GetElapsedTime(start) > TimeSpan.FromSeconds(10))
                throw new TimeoutException($"It did not come about. The log:\n{Log.All}");
            await Task.Delay(20);
        }
    }

    public async Task<string> DigestInForceAsync() => (string)(await GetJsonAsync("/v1/packs"))["inForce"]![0]!["pack"]!["textDigest"]!;

    public T Part<T>()
        where T : notnull => _app.Services.GetRequiredService<T>();

    public IReadOnlyList<Endpoint> Endpoints => _app.Services.GetRequiredService<EndpointDataSource>().Endpoints;

    public Task StopAsync() => _app.StopAsync();

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _app.StopAsync();
        await _app.DisposeAsync();
        Disk.Dispose();
    }
}
