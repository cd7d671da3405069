using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Service.Hosting;

namespace FindingRules.Service.Packs;

/// <summary>Looks at all pack folders and puts what is good on the shelf. Used by one thread at a time.</summary>
internal sealed class PackKeeper(ServiceSettings settings, PackShelf shelf, TimeProvider time, ILogger<PackKeeper> log)
{
    private readonly Dictionary<string, PackSlot> _slots = new(StringComparer.Ordinal);
    private readonly Dictionary<string, DateTimeOffset> _emptyRoots = new(StringComparer.Ordinal);

    /// <summary>True where a folder changed that must be seen once more before it is decided on.</summary>
    public bool Look()
    {
        var now = time.GetUtcNow();
        var there = FindSlots(now);
        var isMoving = false;
        var isDecided = false;
        foreach (var slot in Ordered())
        {
            var seen = slot.Look(there.Contains(slot.Path), LoadLimits.Default, now);
            isMoving |= seen == Seen.Moving;
            isDecided |= seen is Seen.Taken or Seen.Refused;
            if (seen == Seen.Refused) Report(slot);
        }
        if (isDecided || _emptyRoots.Count > 0 || !shelf.State.Refused.IsEmpty) Shelve(now);
        return isMoving;
    }

    private HashSet<string> FindSlots(DateTimeOffset now)
    {
        var there = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < settings.PackFolders.Length; i++)
        {
            var root = settings.PackFolders[i];
            var found = FolderLook.FindPacks(root);
            foreach (var path in found)
                if (there.Add(path)) _slots.TryAdd(path, new PackSlot(path, i));
            if (!found.IsEmpty || _slots.Values.Any(s => s.Order == i)) _emptyRoots.Remove(root);
            else if (_emptyRoots.TryAdd(root, now)) ServiceLog.FolderWithoutPack(log, root);
        }
        return there;
    }

    private IEnumerable<PackSlot> Ordered() =>
        _slots.Values.OrderBy(s => s.Order).ThenBy(s => s.Path, StringComparer.Ordinal);

    private void Shelve(DateTimeOffset now)
    {
        var old = shelf.State;
        var names = new Dictionary<string, PackSlot>(StringComparer.Ordinal);
        var refused = ImmutableArray.CreateBuilder<RefusedFolder>();
        // Who is in force already keeps its name; a folder that is gone gives its name up to one that is there.
        foreach (var slot in Ordered().OrderBy(s => s.IsGone).ThenBy(s => !s.IsInForce))
        {
            var clash = slot.Good is null ? null : names.GetValueOrDefault(slot.Good.Pack.Name);
            if (slot.Good is not null && clash is null) names.Add(slot.Good.Pack.Name, slot);
            if (clash is not null && !slot.IsGone) refused.Add(Clash(slot, clash));
            else if (!slot.Refusal.IsEmpty && (clash is null || !slot.IsGone))
                refused.Add(new RefusedFolder(slot.Folder, slot.DecidedAt, slot.Good?.Pack, slot.Refusal));
            slot.Clashes = clash is not null;
        }
        foreach (var slot in _slots.Values) slot.IsInForce = names.ContainsValue(slot);
        foreach (var (root, since) in _emptyRoots)
            refused.Add(Empty(Path.GetFileName(root), since));

        ImmutableArray<TakenPack> inForce = [.. Ordered().Where(s => s.IsInForce).Select(s => s.Good!)];
        shelf.State = new ShelfState(inForce, EarlierOnes(old, inForce, now), [.. refused.OrderBy(r => r.Folder, StringComparer.Ordinal)]);
        foreach (var pack in inForce.Where(p => !old.InForce.Contains(p)))
            ServiceLog.PackInForce(log, pack.Pack.Name, pack.Pack.Version, pack.Pack.TextDigest, pack.Folder, pack.Pack.Rules.Length);
    }

    private static RefusedFolder Empty(string folder, DateTimeOffset since) =>
        new(folder, since, null, [ServiceMessages.FolderWithoutPack(folder)]);

    private RefusedFolder Clash(PackSlot slot, PackSlot other)
    {
        var message = ServiceMessages.NameTaken(slot.Folder, slot.Good!.Pack.Name, other.Folder);
        if (!slot.Clashes) ServiceLog.Refused(log, slot.Folder, message.Code, "", message.Text);
        return new RefusedFolder(slot.Folder, slot.DecidedAt, other.Good!.Pack, [message]);
    }

    private ImmutableArray<EarlierPack> EarlierOnes(ShelfState old, ImmutableArray<TakenPack> inForce, DateTimeOffset now)
    {
        var digests = inForce.Select(p => p.Pack.TextDigest).ToHashSet(StringComparer.Ordinal);
        var replaced = old.InForce.Select(p => new EarlierPack(p.Pack, p.Files, p.TakenAt, now));
        return
        [
            .. replaced.Concat(old.Earlier)
                .Where(p => digests.Add(p.Pack.TextDigest))
                .Take(settings.Limits.EarlierPacks),
        ];
    }

    private void Report(PackSlot slot)
    {
        const int most = 20;
        foreach (var message in slot.Refusal.Where(m => m.Severity == Severity.Error).Take(most))
            ServiceLog.Refused(log, slot.Folder, message.Code, message.Location.ToString(), message.Text);
    }
}
