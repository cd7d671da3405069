using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;

namespace FindingRules.Service.Packs;

/// <summary>A pack that was good when its files were taken, with their exact bytes.</summary>
/// <param name="Folder">The last name of the folder; never a path of this machine.</param>
/// <param name="Messages">Doubts and notes.</param>
internal sealed record TakenPack(
    CompiledPack Compiled, ImmutableArray<PackFile> Files, string Folder, DateTimeOffset TakenAt, ImmutableArray<Message> Messages)
{
    public Pack Pack => Compiled.Pack;
}

/// <summary>A pack that another one replaced; what it needs for evaluating is let go.</summary>
internal sealed record EarlierPack(Pack Pack, ImmutableArray<PackFile> Files, DateTimeOffset TakenAt, DateTimeOffset ReplacedAt);

/// <summary>A folder whose present state was not taken.</summary>
/// <param name="Kept">The pack that is in force instead, if there is one.</param>
internal sealed record RefusedFolder(string Folder, DateTimeOffset At, Pack? Kept, ImmutableArray<Message> Messages);

/// <summary>A pack and its texts, whether still in force or not.</summary>
internal sealed record KeptPack(Pack Pack, ImmutableArray<PackFile> Files);

/// <summary>Everything that is known of packs at one moment. A request looks once and keeps what it saw.</summary>
internal sealed record ShelfState(
    ImmutableArray<TakenPack> InForce, ImmutableArray<EarlierPack> Earlier, ImmutableArray<RefusedFolder> Refused)
{
    public static ShelfState Empty { get; } = new([], [], []);

    public ImmutableArray<string> Names => [.. InForce.Select(p => p.Pack.Name).Order(StringComparer.Ordinal)];

    /// <summary>By name or text digest.</summary>
    public TakenPack? FindInForce(string nameOrDigest) =>
        InForce.FirstOrDefault(p => p.Pack.Name == nameOrDigest || p.Pack.TextDigest == nameOrDigest);

    /// <summary>By name among those in force, by text digest among all.</summary>
    public KeptPack? Find(string nameOrDigest)
    {
        if (FindInForce(nameOrDigest) is { } taken) return new KeptPack(taken.Pack, taken.Files);
        var earlier = Earlier.FirstOrDefault(p => p.Pack.TextDigest == nameOrDigest);
        return earlier is null ? null : new KeptPack(earlier.Pack, earlier.Files);
    }
}

/// <summary>Holds the packs in force; a new state takes the place of the old one at once and whole.</summary>
internal sealed class PackShelf
{
    private volatile ShelfState _state = ShelfState.Empty;

    public ShelfState State
    {
        get => _state;
        set => _state = value;
    }
}
