using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Cli.Drill;

/// <summary>A file that is written whole or not at all: beside its place first, then moved over it.</summary>
internal static class WholeFile
{
    public const string Unfinished = ".unfinished";

    public static bool Write(string path, byte[] bytes, MessageBag messages)
    {
        try
        {
            using (var file = new FileStream(path + Unfinished, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                file.Write(bytes);
                file.Flush(flushToDisk: true);
            }
            File.Move(path + Unfinished, path, overwrite: true);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            messages.Add(DrillMessages.NotWritten(new SourceText(path, "").Whole, path, e.Message.ReplaceLineEndings(" ").TrimEnd('.')));
            return false;
        }
    }
}
