using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR81xx: questions for trainees, their answers, and the file that keeps how they went.</summary>
public static class DrillMessages
{
    public static Message NotAQuestion(Location at, string found) =>
        new(8101, Severity.Error, at, $"`{found}` is not the id of a question, expected one as the questions carry it")
        {
            Label = "copy the whole id; its last part tells slips",
        };

    public static Message QuestionOfOtherPack(Location at, string found, string pack) =>
        new(8102, Severity.Error, at, $"the pack `{pack}` as it is now has no question `{found}`")
        {
            Label = "the pack was changed since, or the question is of another pack; draw new questions",
        };

    public static Message NoSuchOption(Location at, int found, int most) =>
        new(8103, Severity.Error, at, $"the question has no option {found}, expected 1 to {most}");

    public static Message NoSuchFinding(Location at, string found, string last) =>
        new(8104, Severity.Error, at, $"the question shows no finding `{found}`, expected letters from `a` to `{last}`");

    public static Message NothingToAsk(Location at, string pack) =>
        new(8105, Severity.Error, at, $"the cases of the pack `{pack}` give no question")
        {
            Label = "a question needs a case in which something is said, asked for or left open, and rules that nearly say something else",
        };

    public static Message NumberOutOfRange(Location at, string option, string found, long least, long most) =>
        new(8106, Severity.Error, at, $"`{option}` is `{found}`, expected a whole number from {least} to {most}");

    public static Message ProgressNotReadable(Location at, string path, string why) =>
        new(8107, Severity.Error, at, $"`{path}` keeps no progress that can be gone on with: {why}")
        {
            Label = "it was left as it is; name another file, or move it away to start anew",
        };

    public static Message ProgressOfOther(Location at, string path, string what, string found, string expected) =>
        new(8108, Severity.Error, at, $"`{path}` keeps the progress of {what} `{found}`, expected `{expected}`")
        {
            Label = "it was left as it is; name another file",
        };

    public static Message LearnerNotOpaque(Location at, string found) =>
        new(8109, Severity.Error, at,
            $"`{found}` is no key for a learner, expected up to 64 letters, digits, hyphens and full stops with a digit among them")
        {
            Label = "make up a key that names nobody, such as `L-07`",
        };

    public static Message ExportEnding(Location at, string found) =>
        new(8110, Severity.Error, at, $"`{found}` ends in nothing that tells the form, expected `.json` or `.md`");

    public static Message NotWritten(Location at, string path, string why) =>
        new(8111, Severity.Error, at, $"`{path}` could not be written: {why}");

    public static Message AnswerForm(Location at, string why) =>
        new(8112, Severity.Error, at, $"the answer is not of the expected form: {why}")
        {
            Label = "expected `question` (its id), `choice` (a number) and perhaps `deciding` (a list of letters)",
        };
}
