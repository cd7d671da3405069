using FindingRules.Model.Messages;
using FindingRules.Model.Text;

namespace FindingRules.Cli.Input;

/// <summary>One study as it was given: its text, or the message that says why there is none.</summary>
/// <param name="Line">Where there is a study a line.</param>
internal sealed record StudyInput(string Source, int? Line, SourceText? Text, Message? Problem);
