using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;

namespace FindingRules.Service.Packs;

/// <summary>One pack folder: what was last decided about it, and the last good pack that it held.</summary>
internal sealed class PackSlot(string path, int order)
{
    private const string Gone = "gone";
    private string? _decided;
    private string? _pending;

    public string Path { get; } = path;

    public string Folder { get; } = System.IO.Path.GetFileName(System.IO.Path.TrimEndingDirectorySeparator(path));

    public int Order { get; } = order;

    public TakenPack? Good { get; private set; }

    /// <summary>Why the folder's present state is not the one in force; empty where it is.</summary>
    public ImmutableArray<Message> Refusal { get; private set; } = [];

    public DateTimeOffset DecidedAt { get; private set; }

    public bool IsGone => _decided == Gone;

    /// <summary>The name of the pack is in use by another folder.</summary>
    public bool Clashes { get; set; }

    public bool IsInForce { get; set; }

    /// <summary>
    /// Looks at the folder. A change counts once two looks in a row saw the same, so that files that are still being
    /// copied are not taken half.
    /// </summary>
    public Seen Look(bool isThere, LoadLimits limits, DateTimeOffset now)
    {
        var look = isThere && FolderLook.IsPack(Path) ? FolderLook.At(Path, limits) : null;
        var fingerprint = look?.Fingerprint ?? Gone;
        if (fingerprint == _decided)
        {
            _pending = null;
            return Seen.Same;
        }
        if (fingerprint != _pending)
        {
            _pending = fingerprint;
            return Seen.Moving;
        }
        (_decided, _pending, DecidedAt) = (fingerprint, null, now);
        if (fingerprint == Gone) Refusal = [ServiceMessages.FolderGone(Folder)];
        else Take(look!.Files, limits, now);
        return Refusal.IsEmpty ? Seen.Taken : Seen.Refused;
    }

    private void Take(PackFiles files, LoadLimits limits, DateTimeOffset now)
    {
        var load = files.Messages.IsEmpty ? CompiledPack.Load(files.Files, limits) : new PackLoad(null, files.Messages);
        Refusal = load.Pack is null ? load.Messages : [];
        if (load.Pack is not null) Good = new TakenPack(load.Pack, files.Files, Folder, now, load.Messages);
    }
}

internal enum Seen
{
    /// <summary>As it was decided on before.</summary>
    Same,

    /// <summary>Changed since the last look: it must be seen once more before anything is decided.</summary>
    Moving,

    Taken,

    Refused,
}
