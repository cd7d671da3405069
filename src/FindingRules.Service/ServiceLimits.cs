namespace FindingRules.Service;

/// <summary>How much the service takes on at once. Each may be set as <c>FindingRules:Limits:Name</c>.</summary>
public sealed record ServiceLimits
{
    /// <summary>The largest study, in bytes.</summary>
    public int StudyBytes { get; init; } = 1024 * 1024;

    /// <summary>Objects and lists inside each other in a study.</summary>
    public int StudyDepth { get; init; } = 32;

    /// <summary>Studies evaluated at the same time.</summary>
    public int ConcurrentReadings { get; init; } = 16;

    /// <summary>Studies that wait for a place; one more is turned away at once.</summary>
    public int WaitingReadings { get; init; } = 256;

    /// <summary>How long a study may wait and be evaluated; then the answer says that there is no reading.</summary>
    public int ReadingMilliseconds { get; init; } = 10_000;

    /// <summary>How long requests in flight may go on once the service was told to stop.</summary>
    public int StopMilliseconds { get; init; } = 10_000;

    /// <summary>Packs that were replaced and can still be asked for by digest.</summary>
    public int EarlierPacks { get; init; } = 16;

    /// <summary>How long the files of a pack must stay as they are before they are taken.</summary>
    public int QuietMilliseconds { get; init; } = 500;

    /// <summary>How often the pack folders are looked at where the file system does not tell of a change.</summary>
    public int LookMilliseconds { get; init; } = 5_000;
}
