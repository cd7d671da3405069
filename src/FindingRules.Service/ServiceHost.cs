using FindingRules.Ledger.Failures;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Service.Codes;
using FindingRules.Service.Drill;
using FindingRules.Service.Explanations;
using FindingRules.Service.Feedback;
using FindingRules.Service.Health;
using FindingRules.Service.Hosting;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;
using FindingRules.Service.Readings;
using FindingRules.Service.Readings.Batch;
using FindingRules.Service.Records;

namespace FindingRules.Service;

/// <summary>Builds and runs the HTTP service.</summary>
public static class ServiceHost
{
    /// <summary>Runs until it is told to stop. 0: it was; 1: it could not be started, and <paramref name="errors"/> says why.</summary>
    public static async Task<int> RunAsync(ServiceOptions options, TextWriter errors, CancellationToken cancellation = default)
    {
        var messages = new MessageBag();
        await using var app = Build(options, messages);
        if (app is null) return Fail(messages, errors);
        try
        {
            await app.StartAsync(cancellation);
        }
        catch (LedgerException e)
        {
            messages.Add(e.Told);
            return Fail(messages, errors);
        }
        catch (Exception e) when (ListenFailure.Why(e) is not null)
        {
            var urls = app.Services.GetRequiredService<ServiceSettings>().Urls;
            messages.Add(ServiceMessages.AddressNotUsable(string.Join(' ', urls), ListenFailure.Why(e)!));
            return Fail(messages, errors);
        }
        await app.WaitForShutdownAsync(cancellation);
        return 0;
    }

    /// <summary>The service, ready to be started; null where a message says why it cannot be.</summary>
    public static WebApplication? Build(ServiceOptions options, MessageBag messages) => Build(options, messages, null);

    internal static WebApplication? Build(ServiceOptions options, MessageBag messages, Action<WebApplicationBuilder>? change)
    {
        var builder = HostBuilding.NewBuilder();
        var settings = ServiceSettings.Read(options, builder.Configuration, messages);
        if (messages.HasErrors) return null;
        builder.AddService(settings);
        change?.Invoke(builder);

        var app = builder.Build();
        app.UseHead();
        app.UseRouting();
        app.UseRequestLog();
        app.UseSecurityHeaders();
        app.UseProblems();
        app.UseOpenApi();
        app.MapReadings();
        app.MapExplanations();
        app.MapBatch();
        app.MapDrill();
        app.MapSearch();
        app.MapRecords();
        app.MapFeedback();
        app.MapLedger();
        app.MapStatistics();
        app.MapPacks();
        app.MapCodes();
        app.MapHealth();
        return app;
    }

    private static int Fail(MessageBag messages, TextWriter errors)
    {
        MessageText.Write(errors, messages.Sorted(), MessageStyle.Plain);
        return 1;
    }
}
