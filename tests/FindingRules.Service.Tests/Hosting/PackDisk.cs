using FindingRules.Testing;

namespace FindingRules.Service.Tests.Hosting;

/// <summary>A pack folder on disk, for one test: packs are put there, changed and taken away.</summary>
internal sealed class PackDisk : IDisposable
{
    private static int _last;

    public PackDisk() => Directory.CreateDirectory(Root);

    public string Root { get; } = Path.Combine(
        Path.GetTempPath(), $"findingrules-packs-{Environment.ProcessId}-{Interlocked.Increment(ref _last)}");

    public static PackDisk WithExample()
    {
        var disk = new PackDisk();
        disk.Write("example", ExamplePack.Plain);
        return disk;
    }

    public string PathOf(string folder, string file) => Path.Combine(Root, folder, file);

    public void Write(string folder, ExamplePack pack)
    {
        Directory.CreateDirectory(Path.Combine(Root, folder));
        foreach (var file in pack.Files) File.WriteAllBytes(PathOf(folder, file.Path), file.Bytes.ToArray());
    }

    /// <summary>The example pack under another name, so that it can stand beside the first.</summary>
    public void WriteNamed(string folder, string name) => Write(folder, Named(name));

    public static ExamplePack Named(string name) =>
        ExamplePack.Plain.Replace("pack", ExamplePack.Plain.TextOf("pack").Replace("pack: example", $"pack: {name}", StringComparison.Ordinal));

    /// <summary>The example pack, with a reason changed so that its digests differ.</summary>
    public static ExamplePack Changed(string because) => ExamplePack.Plain.Replace("rules", ExamplePack.Plain.TextOf("rules")
        .Replace("A defect that crosses the whole tendon leaves no fibres in depth.", because, StringComparison.Ordinal));

    /// <summary>The example pack with one word of a rule misspelt.</summary>
    public static ExamplePack Broken() => ExamplePack.Plain.Replace("rules", ExamplePack.Plain.TextOf("rules")
        .Replace("reangled persists → full-thickness", "reangeld persists → full-thickness", StringComparison.Ordinal));

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
