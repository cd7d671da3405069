using System.Net.Sockets;
using FindingRules.Ledger.Failures;
using Npgsql;

namespace FindingRules.Ledger.Storage.PostgreSql;

/// <summary>PostgreSQL's states and the driver's failures in the ledger's words. Source: PostgreSQL's manual, appendix A.</summary>
internal static class PostgreSqlFailures
{
    public static LedgerException? Explain(Exception failure, string name, TimeSpan waited) => failure switch
    {
        PostgresException state => Explain(state, name, waited),
        NpgsqlException { InnerException: TimeoutException } => Fail.Unreachable(name, "it took too long", failure),
        NpgsqlException => Fail.Unreachable(name, Reason(failure), failure),
        TimeoutException or SocketException => Fail.Unreachable(name, Reason(failure), failure),
        _ => null,
    };

    private static LedgerException Explain(PostgresException state, string name, TimeSpan waited) => state.SqlState switch
    {
        PostgresErrorCodes.DiskFull => Fail.Full(name, state),
        PostgresErrorCodes.LockNotAvailable => Fail.Locked(name, waited, state),
        PostgresErrorCodes.ReadOnlySqlTransaction => Fail.ReadOnly(name, state),
        PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted =>
            Fail.Damaged(name, "the server found contradictions", state),
        PostgresErrorCodes.InvalidCatalogName => Fail.Missing(name, "there is no such database", state),
        PostgresErrorCodes.InsufficientPrivilege => Fail.Refused(name, "the user has not the right", state),
        ['2', '8', ..] => Fail.Refused(name, "user or password are wrong", state),
        ['5', '7', 'P', ..] => Fail.Unreachable(name, "it is stopping or starting", state),
        ['0', '8', ..] or ['5', '3', ..] => Fail.Unreachable(name, $"it reports {state.SqlState}", state),
        _ => Fail.Device(name, $"PostgreSQL reports {state.SqlState}", state),
    };

    private static string Reason(Exception failure) =>
        failure is SocketException socket || (socket = (failure.InnerException as SocketException)!) is not null
            ? $"{socket.SocketErrorCode}" switch
            {
                "ConnectionRefused" => "nothing listens there",
                "HostNotFound" => "there is no such host",
                _ => "the connection failed",
            }
            : "the connection broke";
}
