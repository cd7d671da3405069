using System.Data.Common;

namespace FindingRules.Ledger.Records;

internal static class RowBytes
{
    /// <exception cref="InvalidDataException">There is a value of another kind than was ever written.</exception>
    public static byte[] Of(DbDataReader row, int column, long record) => row.GetValue(column) as byte[]
        ?? throw new InvalidDataException($"record {record} holds values of another form than were ever written");
}
