using System.Diagnostics;
using FindingRules.Ledger.Storage.PostgreSql;
using FindingRules.Ledger.Storage.Sqlite;

namespace FindingRules.Ledger.Storage;

/// <summary>From a location to its store.</summary>
internal static class LedgerDatabases
{
    /// <summary>To append and read; begun where there is none, unless the options say otherwise.</summary>
    public static async Task<ILedgerDatabase> OpenAsync(LedgerLocation at, LedgerOptions options)
    {
        if (!options.BeginsWhereNone) await (await OpenToReadAsync(at)).DisposeAsync();
        return at switch
        {
            LedgerLocation.SqliteFile file => SqliteDatabase.Open(file.Path, options),
            LedgerLocation.PostgreSql server => await PostgreSqlDatabase.OpenAsync(server, options),
            _ => throw new UnreachableException(),
        };
    }

    /// <summary>To read what is there.</summary>
    public static async Task<ILedgerDatabase> OpenToReadAsync(LedgerLocation at) => at switch
    {
        LedgerLocation.SqliteFile file => SqliteDatabase.OpenToRead(file.Path),
        LedgerLocation.PostgreSql server => await PostgreSqlDatabase.OpenToReadAsync(server),
        _ => throw new UnreachableException(),
    };
}
