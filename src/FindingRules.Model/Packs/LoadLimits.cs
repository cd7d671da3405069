namespace FindingRules.Model.Packs;

/// <summary>How much a pack or a study may hold. Each breach is a message; each number may be raised.</summary>
public sealed record LoadLimits
{
    public static LoadLimits Default { get; } = new();

    public int FileBytes { get; init; } = 8 * 1024 * 1024;

    /// <summary>YAML files in the folder of a pack.</summary>
    public int PackFiles { get; init; } = 2_000;

    /// <summary>All of them together.</summary>
    public long PackBytes { get; init; } = 64 * 1024 * 1024;

    public int StudyBytes { get; init; } = 1024 * 1024;

    /// <summary>Mappings and lists inside each other, in a file or a study.</summary>
    public int DocumentDepth { get; init; } = 32;

    public int RuleCharacters { get; init; } = 2_000;

    /// <summary>Brackets inside each other in a rule.</summary>
    public int RuleNesting { get; init; } = 64;

    /// <summary>Connecting words and operators in a rule.</summary>
    public int RuleOperators { get; init; } = 256;
}

/// <summary>A file of a pack as it lies in the folder; the path is relative, with forward slashes.</summary>
public sealed record PackFile(string Path, ReadOnlyMemory<byte> Bytes);
