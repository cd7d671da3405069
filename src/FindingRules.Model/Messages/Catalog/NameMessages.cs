using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR30xx: words of a rule that name nothing, or more than one thing.</summary>
public static class NameMessages
{
    /// <summary><paramref name="names"/>: what could stand here, for the suggestion.</summary>
    public static Message UnknownFinding(Location at, string owner, string found, IReadOnlyCollection<string> names) =>
        Suggesting(new(3001, Severity.Error, at, $"`{owner}` has no finding called `{found}`"), found, names);

    public static Message UnknownValue(Location at, string finding, string found, IReadOnlyCollection<string> values) =>
        Suggesting(new(3002, Severity.Error, at, $"`{finding}` has no value `{found}`"), found, values);

    public static Message Ambiguous(Location at, string written, IReadOnlyCollection<string> ways) =>
        new(3003, Severity.Error, at, $"`{written}` has {ways.Count} meanings")
        {
            Label = $"write {Spelling.List(ways)}",
        };

    /// <summary>One name that two things of one place have: no wording can tell them apart.</summary>
    public static Message SharedName(Location at, string name, string one, string other) =>
        new(3004, Severity.Error, at, $"`{name}` is {one} and {other} of the same structures")
        {
            Label = "give one of them another name",
        };

    public static Message ValueOrStatement(Location at, string word, string finding) =>
        new(3005, Severity.Error, at, $"`{word}` behind `or` may be a value of `{finding}` or a statement of its own")
        {
            Label = $"write `{finding} {word}` for the value, `({word})` for the statement",
        };

    public static Message NeitherValueNorSign(Location at, string word, string finding, IReadOnlyCollection<string> names) =>
        Suggesting(new(3006, Severity.Error, at, $"`{word}` is neither a value of `{finding}` nor a sign"), word, names);

    public static Message BareValue(Location at, string value, IReadOnlyCollection<string> ways) =>
        new(3007, Severity.Error, at, $"`{value}` is a value, and of what is not said")
        {
            Label = $"write {Spelling.List(ways)}",
            Fix = ways.Count == 1 ? new Fix($"write `{ways.First()}`", at, ways.First()) : null,
        };

    public static Message FindingOfOthers(Location at, string finding, IReadOnlyCollection<string> kinds, string owner, string wayOut) =>
        new(3008, Severity.Error, at, $"`{finding}` is a finding of {Spelling.List(kinds, "and")}, and not of `{owner}`")
        {
            Label = wayOut,
        };

    public static Message TopicOfOthers(Location at, string name, string what, string its, string scope, string wayOut) =>
        new(3009, Severity.Error, at, $"{what} `{name}` is for `{its}`, and not for `{scope}`")
        {
            Label = wayOut,
        };

    public static Message Hyphens(Location at, string written, string hyphenated) =>
        new(3010, Severity.Error, at, $"`{written}` is one name and written with hyphens")
        {
            Label = $"did you mean `{hyphenated}`?",
            Fix = new Fix($"write `{hyphenated}`", at, hyphenated),
        };

    public static Message TooManyWords(Location at, string written, string finding, string joinedBy) =>
        new(3011, Severity.Error, at, $"`{finding}` takes one value, found `{written}`")
        {
            Label = $"join what is more by {joinedBy}",
        };

    public static Message StructureAlone(Location at, string structure, string written, string finding) =>
        new(3012, Severity.Error, at, $"`{structure}` alone says nothing")
        {
            Label = $"say what of it: `{written} {finding} …`, `{written} assessed`",
        };

    public static Message UnknownStructure(Location at, string found, IReadOnlyCollection<string> names) =>
        Suggesting(new(3013, Severity.Error, at, $"there is no kind or structure called `{found}`"), found, names);

    public static Message KindOfNothing(Location at, string kind) =>
        new(3014, Severity.Error, at, $"no structure of the vocabulary is of the kind `{kind}`");

    public static Message WordTooMany(Location at, string found, string name) =>
        new(3016, Severity.Error, at, $"found `{found}` behind `{name}`, where no value is expected")
        {
            Label = $"leave out `{found}`",
        };

    internal static Message Suggesting(Message message, string found, IReadOnlyCollection<string> names)
    {
        var closest = Spelling.Closest(found, names);
        return message with
        {
            Label = Spelling.Help(found, names),
            Fix = closest is null ? null : new Fix($"write `{closest}`", message.Location, closest),
        };
    }
}
