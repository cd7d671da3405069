using System.Collections.Immutable;
using FindingRules.Ledger.Records;
using FindingRules.Model.Messages;

namespace FindingRules.Ledger.Searching;

/// <summary>
/// A part of what was found. A page may be shorter than asked although there is more, because the work for one page is bounded: there
/// is more as long as there is a cursor.
/// </summary>
/// <param name="Next">Null at the end.</param>
/// <param name="Refusal">Why the question was not answered; otherwise null.</param>
public sealed record LedgerPage(ImmutableArray<LedgerRecord> Records, string? Next, Message? Refusal = null);
