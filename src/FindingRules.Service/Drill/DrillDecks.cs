using System.Runtime.CompilerServices;
using FindingRules.Drill;

namespace FindingRules.Service.Drill;

/// <summary>
/// The questions of each pack in force, found once; and so many requests worked on at once, for one asks the engine often.
/// </summary>
internal sealed class DrillDecks : IDisposable
{
    private const int AtOnce = 2;

    private readonly ConditionalWeakTable<CompiledPack, DrillDeck> _decks = [];
    private readonly SemaphoreSlim _places = new(AtOnce);

    public async Task<T> AskAsync<T>(CompiledPack pack, Func<DrillDeck, T> ask, CancellationToken gone)
    {
        await _places.WaitAsync(gone);
        try
        {
            return await Task.Run(() => ask(_decks.GetValue(pack, DrillDeck.Of)), gone);
        }
        finally
        {
            _places.Release();
        }
    }

    public void Dispose() => _places.Dispose();
}
