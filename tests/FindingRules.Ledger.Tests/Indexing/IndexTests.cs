using System.Data.Common;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Storage;
using FindingRules.Ledger.Tests.Stores;
using FindingRules.Testing.Stores;
using Microsoft.Data.Sqlite;
using Npgsql;
using Xunit;

namespace FindingRules.Ledger.Tests.Indexing;

public sealed class IndexTests
{
    private const int Records = 2_300;

    private static readonly LedgerQuery[] Queries =
    [
        new() { Rule = "A-1" }, new() { Rule = "A-1", Topic = "tear" }, new() { Study = "S-2047" }, new() { Subject = "right a" },
        new() { Rule = "A-2", Revision = "r2", Subject = "left a" }, new() { Pack = "example" }, new() { Rule = "A-3" },
    ];

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_ledger_of_an_older_form_is_taken_on_and_everything_is_found_as_before(Store store)
    {
        using var place = new LedgerPlace(store);
        string[] before;
        await using (var ledger = await place.OpenAsync())
        {
            await FillAsync(ledger);
            before = await AskAsync(q => ledger.SearchAsync(q));
            Assert.All(before[..^1], found => Assert.NotEqual("", found));
        }
        await TakeBackAsync(place);
        // Who only looks into it cannot take it on.
        await using (var reader = await LedgerReader.OpenAsync(place.Location))
            Assert.Equal(before, await Task.WhenAll(Queries.Select(async q =>
                string.Join(' ', await reader.FindAllAsync(q).Select(r => r.Index).ToListAsync()))));
        await using var again = await place.OpenAsync();
        Assert.Equal(before, await AskAsync(q => again.SearchAsync(q)));
        await again.AddAsync(Entries.Reading(9_999, Terms(4)));
        Assert.Equal(Records, (await again.SearchAsync(Queries[0])).Records[0].Index);
        await using var connection = await ConnectAsync(place);
        Assert.Equal(0, await connection.ScalarAsync<long>(store == Store.Sqlite
            ? "SELECT count(*) FROM sqlite_master WHERE name = 'occurrence'"
            : "SELECT count(*) FROM pg_tables WHERE tablename = 'occurrence' AND schemaname = current_schema()"));
    }

    /// <summary>As when there is no room, or another process indexes.</summary>
    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_question_is_answered_whole_while_the_index_cannot_be_written(Store store)
    {
        using var place = new LedgerPlace(store);
        string[] before;
        await using (var ledger = await place.OpenAsync())
        {
            await FillAsync(ledger);
            before = await AskAsync(q => ledger.SearchAsync(q), 3);
        }
        await using var holder = await ConnectAsync(place);
        await holder.ExecuteAsync("UPDATE watermark SET indexed = 700");
        await holder.ExecuteAsync(store == Store.Sqlite ? "BEGIN IMMEDIATE" : "BEGIN; SELECT * FROM watermark FOR UPDATE");
        await using (var ledger = await place.OpenAsync(new LedgerOptions { LockWait = TimeSpan.FromMilliseconds(100) }))
            Assert.Equal(before, await AskAsync(q => ledger.SearchAsync(q), 3));
    }

    private static async Task FillAsync(RecordLedger ledger)
    {
        await ledger.StorePackAsync(Entries.Pack);
        // Indexed in steps of many sizes.
        for (var (i, size) = (0, 1); i < Records; (i, size) = (i + size, Math.Min(Records - i - size, (size * 3) + 1)))
        {
            await Task.WhenAll(Enumerable.Range(i, size).Select(n => ledger.AppendAsync(Entries.Reading(n, Terms(n)))));
            await ledger.SearchAsync(new LedgerQuery());
        }
    }

    private static IndexTerms Terms(int number) => new()
    {
        Study = $"S-{number}",
        Subjects = [number % 2 == 0 ? "right a" : "left a"],
        Topics = number % 5 == 0 ? [new TopicTerm("tear", "full")] : [],
        Rules = number % 4 == 0
            ? [new RuleTerm("A-1", "r1", RuleOutcomes.Fired, [])]
            : [new RuleTerm("A-2", number % 3 == 0 ? "r2" : "r1", RuleOutcomes.Fired, [])],
    };

    private static async Task<string[]> AskAsync(Func<LedgerQuery, Task<LedgerPage>> search, int most = int.MaxValue)
    {
        var answers = new List<string>();
        foreach (var query in Queries.Take(most))
        {
            var found = new List<long>();
            for (var next = query with { Limit = 900 }; next is not null;)
            {
                var page = await search(next);
                found.AddRange(page.Records.Select(r => r.Index));
                next = page.Next is { } cursor ? next with { Cursor = cursor } : null;
            }
            Assert.Equal(found.OrderDescending().Distinct(), found);
            answers.Add(string.Join(' ', found));
        }
        return [.. answers];
    }

    /// <summary>The first form: a row for each word of each record.</summary>
    private static async Task TakeBackAsync(LedgerPlace place)
    {
        await using var connection = await ConnectAsync(place);
        var number = connection is SqliteConnection ? "INTEGER" : "BIGINT";
        await connection.ExecuteAsync(
            $"CREATE TABLE occurrence (word {number} NOT NULL, position {number} NOT NULL, PRIMARY KEY (word, position))");
        var rows = await connection.ListAsync(
            r => (Word: r.GetInt64(0), Chunk: r.GetInt64(1), Places: Places.Read(r.GetFieldValue<byte[]>(2))),
            "SELECT word, chunk, positions FROM posting");
        await connection.ExecuteAsync("BEGIN");
        foreach (var row in rows)
            await connection.ExecuteAsync("INSERT INTO occurrence VALUES " + string.Join(
                ',', row.Places.Descending(Places.Span).Select(p => $"({row.Word}, {Places.FirstOf(row.Chunk) + p})")));
        await connection.ExecuteAsync("DROP TABLE posting");
        await connection.ExecuteAsync("COMMIT");
        await connection.ExecuteAsync(connection is SqliteConnection
            ? "PRAGMA user_version = 1" : "UPDATE about SET value = '1' WHERE name = 'form'");
    }

    private static async Task<DbConnection> ConnectAsync(LedgerPlace place)
    {
        DbConnection connection = place.Location is LedgerLocation.PostgreSql server
            ? new NpgsqlConnection($"{server.ConnectionString};Pooling=false")
            : new SqliteConnection($"Data Source={place.Name};Pooling=false");
        await connection.OpenAsync();
        return connection;
    }
}
