using Npgsql;

namespace FindingRules.Ledger.Storage.PostgreSql;

/// <summary>Connection strings as people write them.</summary>
internal static class ConnectionText
{
    public static bool IsUsable(string text) => Read(text) is { Host: not null };

    public static string WithoutSecrets(string text) => Read(text) is { } read
        ? $"postgresql:{read.Host}:{read.Port}/{read.Database ?? read.Username}{(read.SearchPath is { } schema ? $" ({schema})" : "")}"
        : "postgresql";

    private static NpgsqlConnectionStringBuilder? Read(string text)
    {
        try
        {
            return new NpgsqlConnectionStringBuilder(text);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
