using System.Data.Common;
using FindingRules.Ledger.Failures;

namespace FindingRules.Ledger.Storage;

/// <summary>Shorthand for commands; parameters are named as the SQL names them.</summary>
internal static class DatabaseExtensions
{
    public static DbCommand Command(
        this DbConnection connection, string sql, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        var command = connection.CreateCommand();
#pragma warning disable CA2100 // The SQL is a constant of this project; values are parameters.
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach (var (name, value) in parameters)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = value ?? DBNull.Value;
            command.Parameters.Add(parameter);
        }
        return command;
    }

    public static async Task ExecuteAsync(
        this DbConnection connection, string sql, params (string Name, object? Value)[] parameters)
    {
        await using var command = connection.Command(sql, parameters);
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>The first column of the first row; default where there is none.</summary>
    public static async Task<T?> ScalarAsync<T>(
        this DbConnection connection, string sql, params (string Name, object? Value)[] parameters)
    {
        await using var command = connection.Command(sql, parameters);
        await using var rows = await command.ExecuteReaderAsync();
        return await rows.ReadAsync() && !rows.IsDBNull(0) ? rows.GetFieldValue<T>(0) : default;
    }

    public static async Task<List<T>> ListAsync<T>(
        this DbConnection connection, Func<DbDataReader, T> read, string sql, params (string Name, object? Value)[] parameters)
    {
        await using var command = connection.Command(sql, parameters);
        await using var rows = await command.ExecuteReaderAsync();
        var list = new List<T>();
        while (await rows.ReadAsync()) list.Add(read(rows));
        return list;
    }

    /// <summary>Runs questions that must not see what others write meanwhile.</summary>
    public static Task<T> ReadAtOnceAsync<T>(
        this ILedgerDatabase database, Func<DbConnection, Task<T>> questions, CancellationToken cancellation = default) =>
        database.ReadAsync(async connection =>
        {
            await connection.ExecuteAsync(database.BeginSnapshot);
            try
            {
                return await questions(connection);
            }
            finally
            {
                // The connection may be used again.
                await connection.ExecuteAsync("ROLLBACK");
            }
        }, cancellation);

    /// <summary>Runs a question on a connection of its own; what the provider throws comes out in the ledger's words.</summary>
    public static async Task<T> ReadAsync<T>(
        this ILedgerDatabase database, Func<DbConnection, Task<T>> question, CancellationToken cancellation = default)
    {
        try
        {
            await using var connection = await database.ConnectAsync(cancellation);
            return await question(connection);
        }
        catch (Exception e) when (database.Explain(e) is { } failure)
        {
            throw failure;
        }
        catch (InvalidDataException e)
        {
            throw Fail.Damaged(database.Name, e.Message, e);
        }
    }
}
