using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR0010 and on: mistakes on the command line. The text they point into is the command line itself.</summary>
public static class CommandToolMessages
{
    public static Message UnknownCommand(Location at, string found, IReadOnlyCollection<string> known) =>
        new(0010, Severity.Error, at, $"there is no command `{found}`")
        {
            Label = Spelling.Help(found, known),
            Fix = Replace(at, found, known),
        };

    public static Message NoCommand(Location at, IReadOnlyCollection<string> known) =>
        new(0020, Severity.Error, at, "no command was given")
        {
            Label = Spelling.Help("", known) ?? "`findingrules --help` lists them",
        };

    public static Message UnknownOption(Location at, string found, string command, IReadOnlyCollection<string> known) =>
        new(0011, Severity.Error, at, $"`{command}` has no option `{found}`")
        {
            Label = Spelling.Help(found, known) ?? $"`findingrules {command} --help` lists them",
            Fix = Replace(at, found, known),
        };

    public static Message MissingArgument(Location at, string command, string argument, string what) =>
        new(0012, Severity.Error, at, $"`{command}` needs {argument}, {what}");

    public static Message MissingValue(Location at, string option, string what) =>
        new(0013, Severity.Error, at, $"`{option}` needs a value, {what}");

    public static Message UnknownValue(Location at, string option, string found, IReadOnlyCollection<string> known) =>
        new(0021, Severity.Error, at, $"`{found}` is no value of `{option}`")
        {
            Label = Spelling.Help(found, known),
            Fix = Replace(at, found, known),
        };

    public static Message WrongNumber(Location at, string option, string found, string expected) =>
        new(0023, Severity.Error, at, $"`{found}` is no value of `{option}`, expected {expected}");

    public static Message GivenTwice(Location at, string option) =>
        new(0022, Severity.Error, at, $"`{option}` is given twice, once is enough");

    public static Message OneTooMany(Location at, string found, string command) =>
        new(0015, Severity.Error, at, $"`{command}` does not know what to do with `{found}`")
        {
            Label = $"`findingrules {command} --help` says what it takes",
        };

    private static Fix? Replace(Location at, string found, IReadOnlyCollection<string> known) =>
        Spelling.Closest(found, known) is { } closest ? new Fix($"write `{closest}`", at, closest) : null;
}
