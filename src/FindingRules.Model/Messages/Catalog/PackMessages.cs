using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR11xx: keys, forms and names in the files of a pack.</summary>
public static partial class PackMessages
{
    /// <param name="owner">Such as "the rule `CUFF-010`".</param>
    public static Message MissingKey(Location at, string owner, string key) =>
        Error(1101, at, $"{owner} has no `{key}`; expected one", $"add `{key}:`");

    public static Message UnknownKey(Location at, string owner, string key, IReadOnlyCollection<string> known) =>
        WithSpelling(Error(1102, at, $"{owner} cannot have `{key}`", null), key, known);

    /// <param name="what">Such as "`over`".</param>
    public static Message WrongForm(Location at, string what, string found, string expected) =>
        Error(1103, at, $"{what} is {found}; expected {expected}", $"write {expected}");

    public static Message EmptyText(Location at, string what) =>
        Error(1104, at, $"{what} says nothing; expected words", "write it, or take the key out where it is not needed");

    public static Message NotAName(Location at, string found) =>
        Error(1105, at, $"`{found}` cannot be a name; expected lower-case words joined by hyphens", "such as `tear-length`");

    /// <summary>FR1106: a letter of another script that looks like one of ours, or any other sign a name cannot have.</summary>
    public static Message LookAlike(Location at, string name, string character, string codePoint) =>
        Error(1106, at,
            $"`{name}` holds `{character}` ({codePoint}), which is not one of the letters a to z; expected those, digits and hyphens",
            "type it again on a plain keyboard");

    public static Message ReservedWord(Location at, string found) =>
        Error(1107, at, $"`{found}` is a word of the rule language; expected a name of your own",
            $"add a word, such as `{found}-seen`");

    public static Message NotAnId(Location at, string found, string example) =>
        Error(1108, at, $"`{found}` cannot be an id; expected capital letters and digits joined by hyphens", $"such as `{example}`");

    public static Message NotADate(Location at, string what, string found) =>
        Error(1109, at, $"{what} is `{found}`; expected a day as year-month-day", "such as `2026-09-01`");

    public static Message NotACount(Location at, string what, string found) =>
        Error(1110, at, $"{what} is `{found}`; expected a whole number", "write digits only");

    public static Message NotOneOf(Location at, string what, string found, IReadOnlyCollection<string> known) =>
        WithSpelling(Error(1111, at, $"{what} cannot be `{found}`", null), found, known);

    public static Message DeclaredTwice(Location at, string what, string name, Location first) =>
        Error(1112, at, $"the {what} `{name}` is declared a second time; expected each name once in the pack",
            "rename or remove one of the two") with
        {
            Related = [new(first, "first here")],
        };

    public static Message ListedTwice(Location at, string what, string item, Location first) =>
        Error(1113, at, $"`{item}` is twice in {what}; expected each once", "take one out") with
        {
            Related = [new(first, "first here")],
        };

    public static Message TooFew(Location at, string what, int found, int least) =>
        Error(1114, at, $"{what} has {found} of its entries; expected at least {least}", "add what is missing");

    public static Message NotTrueOrFalse(Location at, string what, string found) =>
        Error(1115, at, $"{what} is `{found}`; expected `true` or `false`", "write `true` or `false`");

    public static Message TooMany(Location at, string what, int found, int most) =>
        Error(1116, at, $"{what} has {found} of its entries, the most is {most}", "make two of it, or fewer and wider ones");

    private static Message Error(int number, Location at, string text, string? label) =>
        new(number, Severity.Error, at, text) { Label = label };

    private static Message WithSpelling(Message message, string found, IReadOnlyCollection<string> known)
    {
        var closest = Spelling.Closest(found, known);
        return message with
        {
            Label = Spelling.Help(found, known),
            Fix = closest is null ? null : new Fix($"replace it by `{closest}`", message.Location, closest),
        };
    }
}
