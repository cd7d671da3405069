namespace FindingRules;

/// <summary>Why the system did not give a file, in a reader's words and without the machine's paths.</summary>
public static class Unreadable
{
    public static bool Is(Exception failure) => failure is IOException or UnauthorizedAccessException or ArgumentException;

    public static string Because(Exception failure) => failure switch
    {
        UnauthorizedAccessException => "this user may not read it",
        FileNotFoundException or DirectoryNotFoundException => "it is a link to nothing, or went away",
        PathTooLongException => "its path is too long",
        ArgumentException => "this is no path",
        _ => "the disk, the network or another program did not give it",
    };
}
