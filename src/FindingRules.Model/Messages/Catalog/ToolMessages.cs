using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR0xxx: files, limits, and mistakes of the tool itself.</summary>
public static class ToolMessages
{
    /// <summary>FR0001: a bug, wrapped at the front door.</summary>
    public static Message Internal(Location at, string stage, string what) =>
        new(0001, Severity.Error, at, $"the tool failed while {stage}: {what}")
        {
            Label = "nothing was concluded; please report this with the file that caused it",
        };

    public static Message FileNotFound(string path) =>
        new(0002, Severity.Error, new SourceText(path, "").Whole, $"there is no file or folder `{path}`");

    public static Message FileNotReadable(string path, string why) =>
        new(0003, Severity.Error, new SourceText(path, "").Whole, $"`{path}` could not be read: {why}");

    public static Message FileTooLarge(string path, long bytes, long most) =>
        new(0004, Severity.Error, new SourceText(path, "").Whole, $"`{path}` has {bytes} bytes, the most is {most}");

    public static Message NotUtf8(string path, long offset) =>
        new(0005, Severity.Error, new SourceText(path, "").Whole, $"`{path}` is not UTF-8 text: byte {offset} does not fit")
        {
            Label = "save the file as UTF-8",
        };
}
