using System.Collections.Concurrent;
using System.Diagnostics;
using FindingRules.Testing.Stores;

namespace FindingRules.Ledger.Tests.Processes;

/// <summary>A process that appends to a ledger until it is killed.</summary>
internal sealed class AppenderProcess : IDisposable
{
    private readonly Process _process;
    private readonly Task _reading;
    private readonly TaskCompletionSource _ready = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _first = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _open = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public AppenderProcess()
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, [typeof(AppenderProcess).Assembly.Location, "append"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            Environment = { ["DOTNET_TieredPGO"] = "0", ["DOTNET_gcServer"] = "0", ["DOTNET_gcConcurrent"] = "0" },
        };
        // A test host may be a program of its own; the assembly is run by the one that runs any.
        if (Path.GetFileNameWithoutExtension(start.FileName) != "dotnet") start.FileName = "dotnet";
        _process = Process.Start(start)!;
        _reading = Task.Run(ReadAsync);
    }

    /// <summary>The number and id of every record that was acknowledged.</summary>
    public ConcurrentDictionary<int, Guid> Acknowledged { get; } = [];

    public string? Failure { get; private set; }

    /// <summary>Lets it begin; returns when it has opened the ledger.</summary>
    public async Task BeginAsync(LedgerPlace place, int firstNumber)
    {
        await _ready.Task.WaitAsync(TimeSpan.FromMinutes(1));
        var location = place.Location switch
        {
            LedgerLocation.SqliteFile file => file.Path,
            LedgerLocation.PostgreSql server => $"postgresql:{server.ConnectionString}",
            _ => throw new UnreachableException(),
        };
        await _process.StandardInput.WriteLineAsync($"{location}\t{place.KeyFile}\t{firstNumber}");
        await _process.StandardInput.FlushAsync();
        await _open.Task.WaitAsync(TimeSpan.FromMinutes(1));
    }

    /// <summary>Returns when the first record was acknowledged.</summary>
    public Task FirstAsync() => _first.Task.WaitAsync(TimeSpan.FromMinutes(1));

    /// <summary>SIGKILL; returns when all that it had said was read.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        await _reading;
    }

    public void Dispose()
    {
        if (!_process.HasExited) _process.Kill();
        _process.Dispose();
    }

    private async Task ReadAsync()
    {
        while (await _process.StandardOutput.ReadLineAsync() is { } line)
            switch (line.Split(' '))
            {
                case ["ready"]:
                    _ready.SetResult();
                    break;
                case ["open"]:
                    _open.SetResult();
                    break;
                case ["failed", var code]:
                    Failure = code;
                    _open.TrySetResult();
                    break;
                // A line that the kill cut short acknowledges nothing.
                case [var number, var id] when Guid.TryParseExact(id, "D", out var whole):
                    Acknowledged[int.Parse(number)] = whole;
                    _first.TrySetResult();
                    break;
            }
    }
}
