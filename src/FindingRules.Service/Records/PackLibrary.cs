using FindingRules.Ledger;
using FindingRules.Model.Packs;

namespace FindingRules.Service.Records;

/// <summary>Compiles packs from the texts that a ledger keeps; those used last stay ready.</summary>
public sealed class PackLibrary(RecordLedger ledger)
{
    private const int MostReady = 8;
    private readonly Lock _gate = new();
    private readonly LinkedList<(string Digest, PackLoad Load)> _ready = [];

    /// <summary>Null where the ledger does not keep the pack. A pack that this version cannot load has messages only.</summary>
    public async Task<PackLoad?> FindAsync(string textDigest)
    {
        if (Take(textDigest) is { } ready) return ready;
        if (await ledger.FindPackAsync(textDigest) is not { } texts) return null;
        var load = CompiledPack.Load([.. texts.Files.Select(f => new PackFile(f.Path, f.Bytes))]);
        Keep(textDigest, load);
        return load;
    }

    private PackLoad? Take(string digest)
    {
        lock (_gate)
        {
            for (var at = _ready.First; at is not null; at = at.Next)
                if (at.Value.Digest == digest)
                {
                    _ready.Remove(at);
                    _ready.AddFirst(at);
                    return at.Value.Load;
                }
            return null;
        }
    }

    private void Keep(string digest, PackLoad load)
    {
        lock (_gate)
        {
            _ready.AddFirst((digest, load));
            if (_ready.Count > MostReady) _ready.RemoveLast();
        }
    }
}
