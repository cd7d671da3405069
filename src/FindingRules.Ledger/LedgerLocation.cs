using FindingRules.Ledger.Storage.PostgreSql;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger;

/// <summary>Where a ledger lies.</summary>
public abstract record LedgerLocation
{
    private const string Server = "postgresql:";

    private LedgerLocation()
    {
    }

    /// <summary>How messages name it; without a password.</summary>
    public abstract string Name { get; }

    /// <summary>One file, begun when it is not there.</summary>
    public sealed record SqliteFile(string Path) : LedgerLocation
    {
        public override string Name => Path;
    }

    /// <summary>
    /// A database that several services share. The tables lie in the first schema of the connection's <c>Search Path</c>.
    /// </summary>
    public sealed record PostgreSql(string ConnectionString) : LedgerLocation
    {
        public override string Name => ConnectionText.WithoutSecrets(ConnectionString);
    }

    /// <summary>Reads what a setting or an option says: the path of a file, or <c>postgresql:</c> and a connection string.</summary>
    /// <returns>Null where a message says what is wrong.</returns>
    public static LedgerLocation? Read(string text, MessageBag messages)
    {
        var isServer = text.StartsWith(Server, StringComparison.OrdinalIgnoreCase);
        if (!isServer && !string.IsNullOrWhiteSpace(text)) return new SqliteFile(text);
        if (isServer && ConnectionText.IsUsable(text[Server.Length..])) return new PostgreSql(text[Server.Length..]);
        // What was written may hold a password.
        messages.Add(LedgerMessages.LocationUnclear(isServer ? Server : text));
        return null;
    }
}
