using FindingRules.Service.Hosting;
using FindingRules.Service.Records;

namespace FindingRules.Service.Packs;

/// <summary>
/// Has the pack folders looked at, at the start, when the file system tells of a change, and every few seconds for the
/// file systems that tell nothing.
/// </summary>
internal sealed class PackWatch(
    ServiceSettings settings, PackKeeper keeper, PackRecords records, ILogger<PackWatch> log) : BackgroundService
{
    // At the start there is nothing that a half copied pack could replace, and end marks and counts tell one that was cut short.
    private const int QuietAtStartMilliseconds = 50;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var changed = new SemaphoreSlim(0, 1);
        var watchers = settings.PackFolders.Select(f => Watch(f, changed)).OfType<FileSystemWatcher>().ToArray();
        try
        {
            if (await LookAsync()) await Task.Delay(Math.Min(QuietAtStartMilliseconds, settings.Limits.QuietMilliseconds), stoppingToken);
            while (!stoppingToken.IsCancellationRequested)
            {
                if (await LookAsync()) await Task.Delay(settings.Limits.QuietMilliseconds, stoppingToken);
                else await changed.WaitAsync(settings.Limits.LookMilliseconds, stoppingToken);
            }
        }
        catch (OperationCanceledException)
        {
            // The service was told to stop.
        }
        finally
        {
            foreach (var watcher in watchers) watcher.Dispose();
        }
    }

    private async Task<bool> LookAsync()
    {
        try
        {
            var isMoving = keeper.Look();
            await records.KeepAsync();
            return isMoving;
        }
#pragma warning disable CA1031 // Whatever goes wrong with a folder, the packs in force go on being read.
        catch (Exception e)
#pragma warning restore CA1031
        {
            ServiceLog.FoldersNotReadable(log, e);
            return false;
        }
    }

    private FileSystemWatcher? Watch(string folder, SemaphoreSlim changed)
    {
        try
        {
            var watcher = new FileSystemWatcher(folder) { IncludeSubdirectories = true };
            watcher.Changed += (_, _) => Signal(changed);
            watcher.Created += (_, _) => Signal(changed);
            watcher.Deleted += (_, _) => Signal(changed);
            watcher.Renamed += (_, _) => Signal(changed);
            watcher.EnableRaisingEvents = true;
            return watcher;
        }
        catch (Exception e) when (e is IOException or ArgumentException or UnauthorizedAccessException)
        {
            ServiceLog.NotWatched(log, folder, settings.Limits.LookMilliseconds);
            return null;
        }
    }

    private static void Signal(SemaphoreSlim changed)
    {
        try
        {
            if (changed.CurrentCount == 0) changed.Release();
        }
        catch (Exception e) when (e is SemaphoreFullException or ObjectDisposedException)
        {
            // Two changes at once, or one while stopping: the look that comes sees both.
        }
    }
}
