using System.Diagnostics;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules;

/// <summary>
/// Turns a bug of a stage into FR0001. No stage throws for what an author or a sender wrote, so whatever is caught here
/// is ours; an answer must never be missing without a word because of it.
/// </summary>
public static class Guard
{
    public static T? Run<T>(Func<T?> stage, string name, Location at, MessageBag messages)
        where T : class
    {
        try
        {
            return stage();
        }
        catch (Exception bug) when (bug is not OperationCanceledException)
        {
            messages.Add(ToolMessages.Internal(at, name, Describe(bug)));
            return null;
        }
    }

    /// <summary>On one line, with the place in the code: a report without it helps nobody.</summary>
    public static string Describe(Exception bug)
    {
        var frame = new StackTrace(bug).GetFrame(0)?.GetMethod();
        var place = frame is null ? "" : $" in {frame.DeclaringType?.Name}.{frame.Name}";
        return $"{bug.Message.ReplaceLineEndings(" ")} ({bug.GetType().Name}{place})";
    }
}
