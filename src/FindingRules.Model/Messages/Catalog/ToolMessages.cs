using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR0xxx: files, limits, the command line, and mistakes of the tool itself.</summary>
public static class ToolMessages
{
    /// <summary>FR0001: a bug, wrapped at the front door.</summary>
    public static Message Internal(Location at, string stage, string what) =>
        new(0001, Severity.Error, at, $"the tool failed while {stage}: {what}")
        {
            Label = "nothing was concluded; please report this with the file that caused it",
        };

    public static Message FileNotFound(string path, string? closest = null) =>
        new(0002, Severity.Error, Nowhere(path), $"there is no file or folder `{path}`")
        {
            Label = closest is null ? null : $"did you mean `{closest}`?",
        };

    public static Message FileNotReadable(string path, string why) =>
        new(0003, Severity.Error, Nowhere(path), $"`{path}` could not be read: {why}");

    public static Message FileTooLarge(string path, long bytes, long most) =>
        new(0004, Severity.Error, Nowhere(path), $"`{path}` has {bytes} bytes, the most is {most}");

    /// <summary>For what is read as it comes, so that its whole size is not known.</summary>
    public static Message StudyTooLarge(Location at, long most) =>
        new(0019, Severity.Error, at, $"the study has more than {most} bytes, which is the most");

    /// <param name="line">Where there is a study a line; the offset is then counted from its start.</param>
    public static Message NotUtf8(string path, long offset, int line = 1) =>
        new(0005, Severity.Error, new SourceText(path, "", line).Whole, $"`{path}` is not UTF-8 text: byte {offset} does not fit")
        {
            Label = "save the file as UTF-8",
        };

    public static Message NoManifest(string folder, string? nested) =>
        new(0006, Severity.Error, Nowhere(folder), $"`{folder}` has no `pack.yaml`, so it is not the folder of a pack")
        {
            Label = nested is null ? "a pack is a folder that holds `pack.yaml`" : $"did you mean `{nested}`?",
        };

    public static Message NotAFolder(string path) =>
        new(0007, Severity.Error, Nowhere(path), $"`{path}` is a file, a pack is the folder that holds `pack.yaml`")
        {
            Label = "the pack comes first, then the studies",
        };

    public static Message NotAStudyFile(string path) =>
        new(0008, Severity.Error, Nowhere(path), $"`{path}` is a folder, a study is a JSON file");

    public static Message LinkLeavesFolder(string path) =>
        new(0009, Severity.Error, Nowhere(path), $"`{path}` is a link to a place outside the folder of the pack")
        {
            Label = "put the file itself into the folder",
        };

    public static Message TooManyFiles(string folder, long found, long most, string what) =>
        new(0014, Severity.Error, Nowhere(folder), $"the pack has {found} {what}, the most is {most}");

    public static Message EmptyInput(string path) =>
        new(0018, Severity.Error, Nowhere(path), $"`{path}` is empty, a study is a JSON object");

    public static Message UnknownCode(string found, string? help) =>
        new(0016, Severity.Error, Nowhere("command line"), $"there is no message with the code `{found}`")
        {
            Label = help ?? "`findingrules code` lists them all",
        };

    /// <param name="done">How many studies were answered, where that is known.</param>
    public static Message Stopped(string path, int? done) =>
        new(0017, Severity.Error, Nowhere(path), $"stopped before the end{AfterStudies(done)}")
        {
            Label = "for the studies that are left there is no reading",
        };

    private static string AfterStudies(int? done) =>
        done is { } number ? $", after {number} {(number == 1 ? "study" : "studies")}" : "";

    private static Location Nowhere(string path) => new SourceText(path, "").Whole;
}
