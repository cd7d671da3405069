namespace FindingRules.Service.Hosting;

/// <summary>Every line of the log. None carries a finding, a study key, a query or a path that a client wrote.</summary>
internal static partial class ServiceLog
{
    [LoggerMessage(1, LogLevel.Information, "listening at {Urls}; the description of the interface is at {Page}")]
    public static partial void Listening(ILogger log, string urls, string page);

    [LoggerMessage(2, LogLevel.Information, "stopping: requests in flight have {Milliseconds} ms")]
    public static partial void Stopping(ILogger log, int milliseconds);

    [LoggerMessage(10, LogLevel.Information, "pack {Pack} {Version} is in force: digest {Digest}, folder {Folder}, {Rules} rules")]
    public static partial void PackInForce(ILogger log, string pack, string version, string digest, string folder, int rules);

    [LoggerMessage(11, LogLevel.Error, "pack folder {Folder} refused: {Code} {Place} {Text}")]
    public static partial void Refused(ILogger log, string folder, string code, string place, string text);

    [LoggerMessage(13, LogLevel.Warning, "{Folder} holds no pack")]
    public static partial void FolderWithoutPack(ILogger log, string folder);

    [LoggerMessage(14, LogLevel.Error, "the pack folders could not be looked at")]
    public static partial void FoldersNotReadable(ILogger log, Exception fault);

    [LoggerMessage(15, LogLevel.Warning, "the file system does not tell of changes in {Folder}; it is looked at every {Milliseconds} ms")]
    public static partial void NotWatched(ILogger log, string folder, int milliseconds);

    [LoggerMessage(16, LogLevel.Information, "records are kept in {Ledger}; it was begun as {Id}")]
    public static partial void LedgerOpened(ILogger log, string ledger, Guid id);

    [LoggerMessage(17, LogLevel.Error, "the ledger failed: {Code} {Text}")]
    public static partial void LedgerFailed(ILogger log, string code, string text);

    [LoggerMessage(18, LogLevel.Information, "the bodies of {Count} records were erased, for they were older than {Days} days")]
    public static partial void Erased(ILogger log, long count, int days);

    [LoggerMessage(19, LogLevel.Information, "rule {Rule} of pack {Pack} is withdrawn, and a record says so")]
    public static partial void Withdrawn(ILogger log, string rule, string pack);

    [LoggerMessage(24, LogLevel.Error,
        "{Count} records are old enough to be erased and cannot be read: `findingrules ledger verify` names them")]
    public static partial void NotErased(ILogger log, int count);

    [LoggerMessage(25, LogLevel.Warning,
        "somebody reads the ledger, so that erased bytes are still in its files; it is tried until they are not")]
    public static partial void NotForgotten(ILogger log);

    [LoggerMessage(26, LogLevel.Warning,
        "a new ledger was begun in {Ledger} with a signing key that was there before: if there was a ledger too, it is gone from there")]
    public static partial void KeyOlderThanLedger(ILogger log, string ledger);

    [LoggerMessage(EventId = 20, Message = "{Method} {Route} {Status} in {Milliseconds} ms")]
    public static partial void Answered(ILogger log, LogLevel level, string method, string route, int status, double milliseconds);

    [LoggerMessage(21, LogLevel.Debug, "read with pack {Pack} {Digest}")]
    public static partial void Read(ILogger log, string pack, string digest);

    [LoggerMessage(22, LogLevel.Warning, "no reading: {Code}")]
    public static partial void NoReading(ILogger log, string code);

    // The text of a fault may quote what was being worked on, so its type and stack are all that is kept.
    [LoggerMessage(23, LogLevel.Error, "request {Request} failed: {Type}\n{Stack}")]
    public static partial void Failed(ILogger log, string request, string type, string stack);
}
