using System.Text.Json;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Statistics;
using FindingRules.Service.Problems;

namespace FindingRules.Service.Records;

/// <summary>Records as the service and the command line write them, alike.</summary>
public static class RecordJson
{
    /// <summary>One line of a list of readings, without its end.</summary>
    public static byte[] ToLine(LedgerRecord record) =>
        JsonSerializer.SerializeToUtf8Bytes(FoundRecordResponse.Of(record), ServiceJson.Options);

    public static byte[] ToBytes(RuleStatistics statistics) => JsonSerializer.SerializeToUtf8Bytes(statistics, ServiceJson.Options);

    /// <summary>A record taken back to its reasons.</summary>
    public static byte[] ToBytes(Guid record, Repetition repetition) =>
        JsonSerializer.SerializeToUtf8Bytes(RecordTraceResponse.Of(record, repetition), ServiceJson.Options);
}
