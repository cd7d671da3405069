using System.Text;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli;

/// <summary>Where a command reads and writes. Tests put streams and writers of their own in place of the process'.</summary>
internal sealed class Terminal : IDisposable
{
    private const int NarrowestUseful = 60;

    public required Stream Input { get; init; }

    public required TextWriter Out { get; init; }

    public required TextWriter Error { get; init; }

    /// <summary>Standard output for what is bytes already and too much to be turned into text and back; null where <see cref="Out"/>
    /// is all there is.</summary>
    public Stream? OutBytes { get; init; }

    /// <summary>A person watches what is written to standard output.</summary>
    public bool IsOutWatched { get; init; }

    /// <summary>A person watches what is written to standard error.</summary>
    public bool IsErrorWatched { get; init; }

    public MessageStyle Style { get; init; } = MessageStyle.Plain;

    /// <summary>For messages about a pack: paths that can be opened from where the command was called.</summary>
    public MessageStyle StyleFor(string pack)
    {
        var folder = File.Exists(pack) ? Path.GetDirectoryName(pack) ?? "" : pack;
        return Style with { ShowPath = path => Openable(folder, path) };
    }

    // Always UTF-8 and never the machine's code page: what is written is as often read by a program as by a person.
    public static Terminal OfProcess()
    {
        if (OperatingSystem.IsWindows()) Console.OutputEncoding = Encoding.UTF8;
        var isErrorWatched = !Console.IsErrorRedirected;
        var output = Console.OpenStandardOutput();
        return new Terminal
        {
            Input = Console.OpenStandardInput(),
            Out = new StreamWriter(output, new UTF8Encoding(false), 16 * 1024),
            OutBytes = output,
            Error = new StreamWriter(Console.OpenStandardError(), new UTF8Encoding(false)) { AutoFlush = true },
            IsOutWatched = !Console.IsOutputRedirected,
            IsErrorWatched = isErrorWatched,
            Style = new MessageStyle { HasColour = isErrorWatched && WantsColour(), Width = WidthOf(isErrorWatched) },
        };
    }

    public void Dispose()
    {
        try
        {
            Out.Flush();
        }
        catch (IOException)
        {
            // The reader of our output has gone: nobody is left to tell.
        }
    }

    private static string Openable(string folder, string path)
    {
        var whole = Path.Combine(folder, path);
        return File.Exists(whole) ? whole : path;
    }

    private static bool WantsColour() =>
        string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
        && Environment.GetEnvironmentVariable("TERM") is not "dumb";

    private static int WidthOf(bool isWatched)
    {
        try
        {
            return isWatched && Console.WindowWidth >= NarrowestUseful
                ? Math.Min(Console.WindowWidth - 1, MessageStyle.Plain.Width)
                : MessageStyle.Plain.Width;
        }
        catch (IOException)
        {
            return MessageStyle.Plain.Width;
        }
    }
}
