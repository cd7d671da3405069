using System.Diagnostics;
using System.Globalization;

namespace FindingRules.Cli.Ledgers;

/// <summary>How far a long piece of work is, on standard error: where a person watches it, or where it is asked for.</summary>
internal sealed class LedgerTicker(Terminal terminal, bool isWanted, string done) : IProgress<long>
{
    private static readonly TimeSpan Often = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan NowAndThen = TimeSpan.FromSeconds(10);
    private readonly bool _isLive = terminal.IsErrorWatched && !terminal.IsOutWatched;
    private long _shownAt = Stopwatch.GetTimestamp();
    private bool _hasLine;

    public long All { get; set; }

    public void Report(long value)
    {
        if (!(_isLive || isWanted) || Stopwatch.GetElapsedTime(_shownAt) < (_isLive ? Often : NowAndThen)) return;
        _shownAt = Stopwatch.GetTimestamp();
        _hasLine = _isLive;
        if (_isLive) terminal.Error.Write($"\r{Line(value)}");
        else terminal.Error.WriteLine(Line(value));
    }

    public void End(long value)
    {
        if (_hasLine) terminal.Error.Write("\r\e[K");
        if (_isLive || isWanted) terminal.Error.WriteLine(Line(value));
    }

    private string Line(long value)
    {
        var of = All > value ? string.Create(CultureInfo.InvariantCulture, $" of {All:N0}") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{value:N0}{of} records {done}");
    }
}
