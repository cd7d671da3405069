using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;

namespace FindingRules.Packs;

/// <summary>The files of a pack in, a bound pack out.</summary>
public static class PackReader
{
    /// <summary>
    /// Reads, checks and binds a pack. Every mistake of every file is a message; null when there was an error.
    /// <paramref name="files"/> are all the YAML files of the folder, <c>pack.yaml</c> among them.
    /// </summary>
    public static Pack? Read(ImmutableArray<PackFile> files, LoadLimits limits, MessageBag messages) =>
        throw new NotImplementedException();
}
