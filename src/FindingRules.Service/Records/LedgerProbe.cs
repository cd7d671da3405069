using FindingRules.Ledger.Failures;
using FindingRules.Model.Messages;
using FindingRules.Service.Packs;

namespace FindingRules.Service.Records;

/// <summary>
/// Whether the ledger takes records. A reading that it did not take counts for a short while: then it is asked anew, so that a service to
/// which nothing is sent any more finds out that the ledger is well again.
/// </summary>
internal sealed class LedgerProbe(LedgerKeeper keeper, PackShelf shelf, TimeProvider time)
{
    private static readonly TimeSpan Lasting = TimeSpan.FromSeconds(3);
    private volatile Seen? _seen;

    public void Failed(LedgerException failure) => _seen = new Seen(failure.Told, time.GetTimestamp());

    /// <summary>Null where it does, or where no records are kept.</summary>
    public async Task<Message?> WhyNotAsync(CancellationToken cancellation)
    {
        if (keeper.Ledger is not { } ledger) return null;
        if (_seen is { } seen && time.GetElapsedTime(seen.At) < Lasting) return seen.Why;
        Message? why = null;
        try
        {
            // Writes nothing new, and needs all that writing needs but room.
            if (shelf.State.InForce is [var pack, ..])
                await ledger.StorePackAsync(RecordedReading.TextsOf(pack.Pack, pack.Files), cancellation);
        }
        catch (LedgerException e)
        {
            why = e.Told;
        }
        _seen = new Seen(why, time.GetTimestamp());
        return why;
    }

    private sealed record Seen(Message? Why, long At);
}
