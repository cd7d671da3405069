using System.Reflection;
using Xunit.Sdk;

namespace FindingRules.Service.Tests.Hosting;

/// <summary>Gives a test each store that it can run on; where there is no PostgreSQL that row says so and is skipped.</summary>
internal sealed class OnSqliteAttribute : DataAttribute
{
    public override IEnumerable<object[]> GetData(MethodInfo testMethod) => [[Store.Sqlite]];
}

internal sealed class OnPostgreSqlAttribute : DataAttribute
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
