using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR12xx: the manifest and the files it lists.</summary>
public static partial class PackMessages
{
    public static Message FileMissing(Location at, string path, IReadOnlyCollection<string> present) =>
        WithSpelling(Error(1202, at, $"the folder has no file `{path}`; expected every file that the manifest lists", null),
            path, present);

    public static Message FileNotListed(Location at, string path) =>
        Error(1203, at, $"`{path}` is not in the manifest; expected every YAML file of the folder to be listed",
            "list it under `files:` in `pack.yaml`, or remove it");

    public static Message FileListedTwice(Location at, string path, Location first) =>
        Error(1204, at, $"`{path}` is listed twice; expected each file once", "take one out") with
        {
            Related = [new(first, "first here")],
        };

    public static Message WrongFileKind(Location at, string path, string listedAs, string found) =>
        Error(1205, at, $"`{path}` is listed as {listedAs} and begins with `{found}:`; expected `{listedAs}:`",
            "correct the manifest, or the first key of the file");

    public static Message EntryCount(Location at, string path, int found, int stated) =>
        Error(1206, at, $"`{path}` has {found} entries and the manifest states {stated}; expected the same number",
            $"look for what was lost or added, then state `{found}`") with
        {
            Fix = new Fix($"state `{found}`", at, $"{found}"),
        };

    public static Message NoFileKind(Location at, IReadOnlyCollection<string> kinds) =>
        Error(1207, at, "this entry names no file of a known kind, or more than one; expected one kind with its path, and `entries`",
            $"the kinds are {Spelling.List(kinds)}");

    public static Message LanguageVersion(Location at, string found, int known) =>
        Error(1208, at, $"the pack is written in version `{found}` of the rule language; expected `{known}`",
            $"this tool knows version {known} only");

    public static Message NotAVersion(Location at, string found) =>
        Error(1209, at, $"the version is `{found}`; expected three numbers with dots", "such as `1.0.0`");

    /// <summary>FR1210, a doubt: the pack counts as a demonstration.</summary>
    public static Message ApprovalOfAnother(Location at, string approved, string actual) =>
        new(1210, Severity.Doubt, at,
            $"what was approved has the digest `{approved}`; the pack as it stands has `{actual}` and counts as a demonstration")
        {
            Label = "have the pack approved as it stands, and state that digest",
        };

    public static Message NotADigest(Location at, string found) =>
        Error(1211, at, $"`{found}` is not a digest; expected 64 digits and letters from a to f", "copy it from a review of the pack");

    public static Message CautionTooShort(Location at, string notice) =>
        Error(1213, at, $"the standing caution leaves out a part of `{notice}`; expected at least these words",
            "put them back; more may follow");

    public static Message NotAPath(Location at, string found) =>
        Error(1214, at, $"`{found}` is not a path inside the pack's folder; expected one with forward slashes that ends in `.yaml`",
            "such as `rules.yaml` or `shoulder/rules.yaml`");
}
