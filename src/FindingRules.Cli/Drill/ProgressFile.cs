using FindingRules.Drill;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Cli.Drill;

/// <summary>Where a learner's progress is kept. What cannot be read is never written over.</summary>
internal sealed class ProgressFile(string path)
{
    private const int MostBytes = 4 * 1024 * 1024;

    public string Path => path;

    /// <summary>Null where there is no file yet, or a message says what is wrong with it.</summary>
    public DrillProgress? Read(MessageBag messages)
    {
        if (Directory.Exists(path)) return Wrong("it is a folder", messages);
        if (!File.Exists(path)) return null;
        try
        {
            if (new FileInfo(path).Length > MostBytes) return Wrong("it is too large to be one", messages);
            var (progress, why) = DrillProgress.Read(File.ReadAllBytes(path));
            return progress ?? Wrong(why!, messages);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Wrong("it could not be read", messages);
        }
    }

    public bool Keep(DrillProgress progress, MessageBag messages) => WholeFile.Write(path, progress.ToBytes(), messages);

    private DrillProgress? Wrong(string why, MessageBag messages)
    {
        messages.Add(DrillMessages.ProgressNotReadable(new SourceText(path, "").Whole, path, why));
        return null;
    }
}
