using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Records;
using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>The commands of an append, prepared once.</summary>
internal sealed class SqliteAppendCommands : IDisposable
{
    private readonly SqliteCommand _tree;
    private readonly Prepared _record;
    private readonly Prepared _body;
    private readonly Prepared _inner;
    private readonly Prepared _retry;
    private readonly Prepared _grown;

    public SqliteAppendCommands(SqliteConnection connection)
    {
        _tree = (SqliteCommand)connection.Command("SELECT size, frontier FROM tree");
        _record = new Prepared(connection, "INSERT INTO record VALUES (@1, @2, @3, @4, @5, @6)", 6);
        _body = new Prepared(connection, "INSERT INTO body VALUES (@1, @2, @3, @4, @5)", 5);
        _inner = new Prepared(connection, "INSERT INTO inner_hash VALUES (@1, @2, @3)", 3);
        _retry = new Prepared(connection, "INSERT INTO retry VALUES (@1, @2, @3)", 3);
        _grown = new Prepared(connection, "UPDATE tree SET size = @1, frontier = @2", 2);
    }

    public Frontier ReadTree(string name)
    {
        using var row = _tree.ExecuteReader();
        try
        {
            return row.Read() ? new Frontier(row.GetInt64(0), row.GetFieldValue<byte[]>(1))
                : throw new InvalidDataException("There is no tree.");
        }
        catch (InvalidDataException e)
        {
            throw Fail.Damaged(name, "the state of its tree is not one", e);
        }
    }

    public void Insert(AppendedRows rows)
    {
        var position = rows.First;
        foreach (var record in rows.Records) Insert(position++, record);
        foreach (var node in rows.Inner) _inner.Run((long)node.Level, node.Place, node.Hash);
        _grown.Run(rows.Tree.Size, rows.Tree.ToBytes());
    }

    public void Dispose()
    {
        _tree.Dispose();
        foreach (var command in (Prepared[])[_record, _body, _inner, _retry, _grown]) command.Dispose();
    }

    private void Insert(long position, NewRecord record)
    {
        var header = record.Header;
        _record.Run(
            position, header.Id.ToByteArray(bigEndian: true), (long)header.Kind, header.Time.ToUnixTimeMilliseconds(),
                record.Leaf, record.HeaderBytes);
        _body.Run(position, record.Body.Salt, record.Body.Content, record.Body.Answer, record.Body.Terms);
        if (record.Retry is { } retry) _retry.Run(retry.Key, retry.Request, position);
    }
}
