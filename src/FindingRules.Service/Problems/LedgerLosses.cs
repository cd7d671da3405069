using FindingRules.Ledger.Failures;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Service.Problems;

/// <summary>What is known of a record that the ledger was to take when it failed.</summary>
internal static class LedgerLosses
{
    public static LedgerLoss Of(LedgerException failure) => failure.Failure switch
    {
        LedgerFailure.Unreachable or LedgerFailure.Device or LedgerFailure.Damaged or LedgerFailure.Missing => LedgerLoss.NotKnown,
        _ => LedgerLoss.NothingRecorded,
    };
}
