using FindingRules.Model.Messages;

namespace FindingRules.Ledger.Failures;

/// <summary>
/// The ledger could not do its work, for a reason outside the request. Whatever was being appended is either whole in the
/// ledger or not at all, and was not acknowledged.
/// </summary>
public sealed class LedgerException : Exception
{
    internal LedgerException(LedgerFailure failure, Message told, Exception? inner = null)
        : base($"{told.Code} {told.Text}", inner)
    {
        Failure = failure;
        Told = told;
    }

    public LedgerFailure Failure { get; }

    /// <summary>What happened and what to do, with a code that has a page.</summary>
    public Message Told { get; }
}
