using FindingRules.Ledger.Packs;
using FindingRules.Model.Packs;

namespace FindingRules.Service.Records;

/// <summary>Compiles packs from the texts that a ledger keeps; those used last stay ready.</summary>
/// <param name="find">Gives the texts that have a digest; null where they are not kept.</param>
public sealed class PackLibrary(Func<string, Task<PackTexts?>> find)
{
    private const int MostReady = 8;
    private readonly Lock _gate = new();
    private readonly LinkedList<(string Digest, PackLoad Load)> _ready = [];

    /// <summary>Null where the ledger does not keep the pack. A pack that this version cannot load has messages only.</summary>
    public async Task<PackLoad?> FindAsync(string textDigest)
    {
        if (Take(textDigest) is { } ready) return ready;
        if (await find(textDigest) is not { } texts) return null;
        var load = CompiledPack.Load([.. texts.Files.Select(f => new PackFile(f.Path, f.Bytes))]);
        Keep(textDigest, load);
        return load;
    }

    /// <summary>Spares compiling what is compiled already.</summary>
    public void Add(string textDigest, CompiledPack pack) => Keep(textDigest, new PackLoad(pack, []));

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
            if (_ready.Any(r => r.Digest == digest)) return;
            _ready.AddFirst((digest, load));
            if (_ready.Count > MostReady) _ready.RemoveLast();
        }
    }
}
