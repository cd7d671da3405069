using System.Data.Common;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Merkle;

namespace FindingRules.Ledger.Storage;

/// <summary>
/// What SQLite and PostgreSQL do each in its own way. Everything else is SQL that both understand, on the connections given here.
/// </summary>
internal interface ILedgerDatabase : IAsyncDisposable
{
    /// <summary>How messages name it.</summary>
    string Name { get; }

    /// <summary>False where an older store was opened to read only: then what is not the same in its form is not looked at.</summary>
    bool IsOfPresentForm { get; }

    /// <summary>SQL that begins a transaction in which nothing changes.</summary>
    string BeginSnapshot { get; }

    /// <summary>A connection to read with; the caller disposes of it.</summary>
    ValueTask<DbConnection> ConnectAsync(CancellationToken cancellation);

    /// <summary>Runs the work in one transaction. When this returns it is as durable as <paramref name="kind"/> asks.</summary>
    Task<T> WriteAsync<T>(WriteKind kind, Func<DbConnection, Task<T>> work);

    /// <summary>The state of the tree; until the transaction ends nobody else appends.</summary>
    Task<Frontier> LockTreeAsync(DbConnection connection);

    /// <summary>The number of records that are indexed; until the transaction ends nobody else indexes.</summary>
    Task<long> LockIndexAsync(DbConnection connection);

    Task InsertAsync(DbConnection connection, AppendedRows rows);

    /// <summary>All but the words of records.</summary>
    Task InsertAsync(DbConnection connection, IndexRows rows);

    /// <summary>Those rows of the index that are there.</summary>
    Task<Dictionary<PostingKey, byte[]>> FindPostingsAsync(DbConnection connection, IReadOnlyCollection<PostingKey> keys);

    /// <summary>Puts rows of the index in the place of what was there; empty ones go.</summary>
    Task WritePostingsAsync(DbConnection connection, IReadOnlyDictionary<PostingKey, byte[]> rows);

    /// <summary>Does what is needed so that erased bytes are gone from the files, where the store can see to that.</summary>
    /// <returns>False where somebody reads what would have to go: to be tried again.</returns>
    Task<bool> ForgetErasedAsync();

    /// <summary>Says in the ledger's own words what a provider reported; null for what no provider reports.</summary>
    LedgerException? Explain(Exception failure);
}

internal enum WriteKind
{
    /// <summary>On disk when it returns.</summary>
    Record,

    /// <summary>The same, of work that locks the tree before anything else.</summary>
    Append,

    /// <summary>May be lost with the machine's power, for it can be made again.</summary>
    Index,
}
