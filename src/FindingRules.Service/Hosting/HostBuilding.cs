using FindingRules.Service.Drill;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using FindingRules.Service.Readings;
using FindingRules.Service.Readings.Batch;
using FindingRules.Service.Records;
using Microsoft.Extensions.Logging.Console;

namespace FindingRules.Service.Hosting;

/// <summary>Sets the host up: server, log, and the parts that requests use.</summary>
internal static class HostBuilding
{
    public static WebApplicationBuilder NewBuilder() => WebApplication.CreateBuilder(new WebApplicationOptions
    {
        // Settings lie beside the program and are read once: the folder it happens to be started in is not watched.
        ContentRootPath = AppContext.BaseDirectory,
        Args = ["--hostBuilder:reloadConfigOnChange=false"],
    });

    public static void AddService(this WebApplicationBuilder builder, ServiceSettings settings)
    {
        builder.WebHost.UseUrls([.. settings.Urls]);
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = settings.Limits.StudyBytes;
        });
        AddLog(builder);

        var services = builder.Services;
        services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromMilliseconds(settings.Limits.StopMilliseconds));
        services.Configure<ConsoleLifetimeOptions>(console => console.SuppressStatusMessages = true);
        services.ConfigureHttpJsonOptions(json => ServiceJson.Configure(json.SerializerOptions));
        services.AddSingleton(settings);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<LedgerKeeper>();
        // First of all: nothing may be answered before there is a place to record it.
        services.AddHostedService(s => s.GetRequiredService<LedgerKeeper>());
        services.AddHostedService<Retention>();
        services.AddSingleton<ReadingRecorder>();
        services.AddSingleton<PackRecords>();
        services.AddSingleton<LedgerProbe>();
        services.AddSingleton<PackShelf>();
        services.AddSingleton<PackKeeper>();
        services.AddHostedService<PackWatch>();
        services.AddHostedService<LifeLog>();
        services.AddSingleton<ReadingDesk>();
        services.AddSingleton<BatchDesk>();
        services.AddSingleton<DrillDecks>();
        services.AddSingleton<StudyEvaluation>((pack, study, limits) => pack.ReadWhole(study, limits));
        services.AddOpenApiDocument();
    }

    private static void AddLog(WebApplicationBuilder builder)
    {
        var log = builder.Logging;
        log.ClearProviders();
        // Standard output is for results; a program's log is not one.
        log.AddConsole(console =>
        {
            console.LogToStandardErrorThreshold = LogLevel.Trace;
            console.FormatterName ??= ConsoleFormatterNames.Simple;
        });
        builder.Services.Configure<SimpleConsoleFormatterOptions>(simple =>
        {
            simple.SingleLine = true;
            WithTime(simple);
        });
        builder.Services.Configure<JsonConsoleFormatterOptions>(WithTime);
        // The framework's own lines hold addresses as they were sent.
        log.AddFilter("Microsoft", LogLevel.Warning);
        log.AddFilter("Microsoft.AspNetCore", LogLevel.Error);
        log.AddFilter("Microsoft.AspNetCore.Hosting.Diagnostics", LogLevel.None);
        // They would log a fault with its text, which may quote a study; it is logged without.
        log.AddFilter("Microsoft.AspNetCore.Diagnostics.ExceptionHandlerMiddleware", LogLevel.None);
        log.AddFilter("Microsoft.AspNetCore.Server.Kestrel", LogLevel.None);
        // Why the service did not start is said in a message of its own.
        log.AddFilter("Microsoft.Extensions.Hosting", LogLevel.Critical);
    }

    private static void WithTime(ConsoleFormatterOptions formatter)
    {
        formatter.TimestampFormat = "yyyy-MM-ddTHH:mm:ss.fffZ ";
        formatter.UseUtcTimestamp = true;
    }
}
