using System.Diagnostics;

namespace FindingRules.Cli.Output;

/// <summary>Counts studies on standard error: as one line that changes where a person watches, else a line now and then.</summary>
internal sealed class ReadProgress(Terminal terminal, bool isWanted)
{
    private const int Step = 1_000;
    private static readonly TimeSpan Often = TimeSpan.FromMilliseconds(200);

    // Over readings on the same screen a changing line would be a nuisance.
    private readonly bool _isLive = terminal.IsErrorWatched && !terminal.IsOutWatched;
    private long _shownAt = Stopwatch.GetTimestamp();
    private bool _hasLine;

    public int Count { get; private set; }

    public int WithoutReading { get; private set; }

    public void Add(bool isWithoutReading)
    {
        Count++;
        if (isWithoutReading) WithoutReading++;
        if (_isLive && Stopwatch.GetElapsedTime(_shownAt) >= Often) ShowLive();
        else if (!_isLive && isWanted && Count % Step == 0) terminal.Error.WriteLine(Summary());
    }

    public void End()
    {
        if (_hasLine) terminal.Error.Write("\r\e[K");
        if (Count > 1 && (isWanted || _isLive || WithoutReading > 0)) terminal.Error.WriteLine(Summary());
    }

    private void ShowLive()
    {
        _shownAt = Stopwatch.GetTimestamp();
        _hasLine = true;
        terminal.Error.Write($"\r{Summary()}");
    }

    private string Summary() => WithoutReading == 0
        ? $"{Count:N0} studies read"
        : $"{Count:N0} studies, {WithoutReading:N0} of them WITHOUT A READING";
}
