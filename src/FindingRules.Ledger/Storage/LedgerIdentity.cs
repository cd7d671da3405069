using System.Data.Common;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Signing;

namespace FindingRules.Ledger.Storage;

/// <summary>What a ledger knows of itself: its id, and the public key that its tree heads are signed with.</summary>
internal sealed record LedgerIdentity(Guid Id, PublicKey Key)
{
    /// <summary>Reads it, or begins the ledger with a new id and key.</summary>
    public static async Task<(Guid Id, SigningKey Key, bool IsKeyOlder)> EstablishAsync(
        ILedgerDatabase database, LedgerLocation at, LedgerOptions options)
    {
        var path = options.KeyFile ?? (at is LedgerLocation.SqliteFile file ? $"{file.Path}.key" : null)
            ?? throw Fail.KeyUnusable("", "no file is named for the signing key of a ledger on a server");
        var identity = await database.ReadAsync(FindAsync);
        // A ledger that has begun has its key; making another would hide that it was lost.
        var isKeyOlder = identity is null && File.Exists(path);
        var key = identity is null ? SigningKey.ReadOrMake(path) : SigningKey.Read(path);
        try
        {
            identity ??= await database.WriteAsync(WriteKind.Record, c => BeginAsync(c, database, key, options.Time));
            if (identity.Key.Id != key.Public.Id) throw Fail.WrongKey(at.Name, key.Public.Id, identity.Key.Id);
            return (identity.Id, key, isKeyOlder);
        }
        catch
        {
            key.Dispose();
            throw;
        }
    }

    /// <summary>Null where the ledger has not begun.</summary>
    public static async Task<LedgerIdentity?> FindAsync(DbConnection connection)
    {
        var about = (await connection.ListAsync(r => (Name: r.GetString(0), Value: r.GetString(1)), "SELECT name, value FROM about"))
            .ToDictionary(a => a.Name, a => a.Value, StringComparer.Ordinal);
        return about.TryGetValue("ledger", out var id) && about.TryGetValue("key", out var key)
            ? new LedgerIdentity(Guid.Parse(id), new PublicKey(Convert.FromBase64String(key)))
            : null;
    }

    // Of several services that begin at once, the first to hold the tree begins it.
    private static async Task<LedgerIdentity> BeginAsync(
        DbConnection connection, ILedgerDatabase database, SigningKey key, TimeProvider time)
    {
        await database.LockTreeAsync(connection);
        if (await FindAsync(connection) is { } begun) return begun;
        var identity = new LedgerIdentity(Guid.CreateVersion7(time.GetUtcNow()), key.Public);
        await connection.ExecuteAsync("INSERT INTO about VALUES ('ledger', @id)", ("@id", identity.Id.ToString()));
        await connection.ExecuteAsync("INSERT INTO about VALUES ('key', @key)", ("@key", Convert.ToBase64String(identity.Key.Der.Span)));
        return identity;
    }
}
