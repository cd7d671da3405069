using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>A command whose parameters are numbered, prepared once and run many times.</summary>
internal sealed class Prepared : IDisposable
{
    private readonly SqliteCommand _command;

    public Prepared(SqliteConnection connection, string sql, int parameters)
    {
        _command = (SqliteCommand)connection.Command(sql);
        for (var i = 1; i <= parameters; i++) _command.Parameters.Add(new SqliteParameter { ParameterName = $"@{i}" });
        _command.Prepare();
    }

    public void Run(params ReadOnlySpan<object> values)
    {
        for (var i = 0; i < values.Length; i++) _command.Parameters[i].Value = values[i];
        _command.ExecuteNonQuery();
    }

    public void Dispose() => _command.Dispose();
}
