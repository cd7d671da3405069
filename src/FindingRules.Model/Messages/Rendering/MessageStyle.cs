namespace FindingRules.Model.Messages.Rendering;

/// <summary>How messages are shown to a person.</summary>
public sealed record MessageStyle
{
    public static MessageStyle Plain { get; } = new();

    public bool HasColour { get; init; }

    /// <summary>Lines of files are cut to this many columns around the words that are meant.</summary>
    public int Width { get; init; } = 160;

    /// <summary>How many messages are shown before the rest is only counted.</summary>
    public int Most { get; init; } = 100;

    /// <summary>How a path is shown: with the folder of its pack before it, a terminal or an editor can open it.</summary>
    public Func<string, string> ShowPath { get; init; } = path => path;
}
