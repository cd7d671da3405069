using System.Reflection;
using Xunit.Sdk;

namespace FindingRules.Testing.Stores;

/// <summary>Gives a test each store that it can run on; where there is no PostgreSQL that row says so and is skipped.</summary>
public sealed class OnSqliteAttribute : DataAttribute
{
    public override IEnumerable<object[]> GetData(MethodInfo testMethod) => [[Store.Sqlite]];
}

public sealed class OnPostgreSqlAttribute : DataAttribute
{
    public OnPostgreSqlAttribute()
    {
        if (LedgerPlace.PostgreSql is null) Skip = "FINDINGRULES_POSTGRES does not hold a connection string.";
    }

    public override IEnumerable<object[]> GetData(MethodInfo testMethod) => [[Store.PostgreSql]];
}

public enum Store
{
    Sqlite,
    PostgreSql,
}
