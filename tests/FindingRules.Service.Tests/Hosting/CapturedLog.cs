using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace FindingRules.Service.Tests.Hosting;

/// <summary>Every line that the service and its framework log, with all that is attached to it.</summary>
internal sealed class CapturedLog : ILoggerProvider
{
    private readonly ConcurrentQueue<string> _lines = new();

    public IReadOnlyCollection<string> Lines => _lines;

    public string All => string.Join('\n', _lines);

    public ILogger CreateLogger(string categoryName) => new Logger(categoryName, _lines);

    public void Dispose()
    {
    }

    private sealed class Logger(string category, ConcurrentQueue<string> lines) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull
        {
            lines.Enqueue($"{category} scope {Attached(state)}");
            return null;
        }

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            lines.Enqueue($"{logLevel} {category} {formatter(state, exception)} {Attached(state)} {exception}");

        private static string Attached<TState>(TState state) => state is IEnumerable<KeyValuePair<string, object?>> members
            ? string.Join(' ', members.Select(m => $"{m.Key}={m.Value}"))
            : $"{state}";
    }
}
