using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Failures;
using FindingRules.Service.Hosting;

namespace FindingRules.Service.Records;

/// <summary>Erases the bodies of records that are older than they may be, at the start and every day.</summary>
internal sealed class Retention(
    LedgerKeeper keeper, ServiceSettings settings, TimeProvider time, ILogger<Retention> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings.Ledger.RetentionDays is not { } days) return;
        using var daily = new PeriodicTimer(TimeSpan.FromDays(1), time);
        try
        {
            do await EraseAsync(days, stoppingToken);
            while (await daily.WaitForNextTickAsync(stoppingToken));
        }
        catch (OperationCanceledException)
        {
            // The service was told to stop; what is left is erased at the next start.
        }
    }

    private async Task EraseAsync(int days, CancellationToken stop)
    {
        if (keeper.Ledger is not { } ledger) return;
        try
        {
            var result = await ledger.EraseAsync(
                new ErasureRequest { Actor = Actors.Service, Reason = "retention", Before = time.GetUtcNow().AddDays(-days) }, stop);
            if (result.Erased > 0) ServiceLog.Erased(log, result.Erased, days);
            if (!result.AreBytesGone) ServiceLog.NotForgotten(log);
            if (result.Unreadable > 0) ServiceLog.NotErased(log, result.Unreadable);
        }
        catch (LedgerException e)
        {
            ServiceLog.LedgerFailed(log, e.Told.Code, e.Told.Text);
        }
#pragma warning disable CA1031 // What nobody foresaw here must not end the service: it is tried again on the next day.
        catch (Exception e) when (e is not OperationCanceledException)
#pragma warning restore CA1031
        {
            ServiceLog.Failed(log, "retention", e.GetType().Name, e.StackTrace ?? "");
        }
    }
}
