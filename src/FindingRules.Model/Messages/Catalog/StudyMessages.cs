using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR50xx: what is wrong with the form of a study that was sent.</summary>
public static partial class StudyMessages
{
    /// <summary>FR5001: <paramref name="found"/> says in plain words what does not fit.</summary>
    public static Message NotJson(Location at, string found, string label) => Error(5001, at, found, label);

    public static Message DuplicateMember(Location at, string member, Location first) =>
        Error(5002, at, $"`{member}` is here a second time; a member stands once in its object", "send one of the two") with
        {
            Related = [new(first, "first here")],
        };

    public static Message TooDeep(Location at, int most) =>
        Error(5003, at, $"lists and objects lie more than {most} deep here; no study needs that", "take the inner ones out");

    /// <summary>FR5004: <paramref name="where"/> is such as "a subject".</summary>
    public static Message UnknownMember(Location at, string member, string where, IReadOnlyCollection<string> known) =>
        WithSpelling(Error(5004, at, $"{where} has no member `{member}`", null), member, known);

    public static Message IdentityMember(Location at, string member) =>
        Error(5005, at, $"`{member}` may say who the patient is; a study holds findings under an opaque key and nothing else",
            "take it out; coarse facts such as the age in years go under `facts` where the vocabulary has them");

    /// <summary>FR5006: such as "a subject", "a list", "a text".</summary>
    public static Message WrongForm(Location at, string what, string found, string expected) =>
        Error(5006, at, $"{what} is {found}; expected {expected}", $"send {expected}");

    public static Message MissingMember(Location at, string where, string member) =>
        Error(5007, at, $"{where} has no `{member}`; expected one", $"add `{member}`");

    public static Message NotAnOpaqueKey(Location at, string what) =>
        Error(5008, at, $"{what} is not an opaque key; expected 1 to 64 letters A to Z, digits, dots, hyphens or underscores",
            "send a key that says nothing about the patient, such as `S-7F3K`");

    public static Message OtherPack(Location at, string found, string pack) =>
        Error(5009, at, $"the study is meant for the pack `{found}`; this pack is `{pack}`", $"send it to that pack, or say `{pack}`");

    /// <summary>FR5035.</summary>
    public static Message SupersedesItself(Location at) =>
        Error(5035, at, "the study says that it replaces itself; expected the key of an earlier one",
            "give the amended study a key of its own");

    public static Message UnknownProtocol(Location at, string found, IReadOnlyCollection<string> known) =>
        WithSpelling(Error(5028, at, $"the pack has no protocol called `{found}`", null), found, known);

    public static Message ProtocolNeedsSide(Location at, string protocol) =>
        Error(5029, at, $"`{protocol}` examines paired structures and no side is said; expected `left` or `right`",
            "add `side`; for both sides list the protocol twice");

    public static Message DuplicateProtocol(Location at, string protocol, Location first) =>
        Error(5030, at, $"the protocol `{protocol}` is listed twice for one side", "list it once") with
        {
            Related = [new(first, "first here")],
        };

    public static Message UnknownStructure(Location at, string found, string? members, IReadOnlyCollection<string> known)
    {
        if (members is not null)
            return Error(5010, at, $"`{found}` is a kind of structures; expected the structure itself", members);
        return WithSpelling(Error(5010, at, $"the vocabulary has no structure called `{found}`", null), found, known);
    }

    public static Message UnknownSide(Location at, string found) =>
        WithSpelling(Error(5024, at, $"`{found}` is not a side; expected `left`, `right` or `midline`", null), found, SideWords);

    public static Message SideDoesNotFit(Location at, string structure, bool isPaired) => isPaired
        ? Error(5025, at, $"`{structure}` is paired and has no midline; expected `left` or `right`",
            "leave `side` out where it is not known")
        : Error(5025, at, $"`{structure}` is not paired; expected no side, or `midline`", "leave `side` out");

    public static Message DuplicateSubject(Location at, string subject, Location first) =>
        Error(5026, at, $"`{subject}` is sent twice; expected each structure once on a side",
            "send all its findings together, or as lesions of it") with
        {
            Related = [new(first, "first here")],
        };

    public static Message DuplicateLesion(Location at, string lesion, Location first) =>
        Error(5027, at, $"the lesion `{lesion}` is sent twice; expected each lesion of a structure under an id of its own",
            "give one of them another id") with
        {
            Related = [new(first, "first here")],
        };

    public static Message NormalAndNotAssessable(Location at, string structure) =>
        Error(5036, at, $"`{structure}` is said to be normal and not assessable; expected one of the two", "take one out");

    public static Message UnsidedBesideSided(Location at, string structure, Location sided) =>
        Error(5038, at, $"`{structure}` is sent without a side, and with one as well; expected the side of each", "add `side`") with
        {
            Related = [new(sided, "with a side here")],
        };

    public static Message TooManyLesions(Location at, string structure, int found, int most) =>
        Error(5039, at, $"`{structure}` has {found} lesions, the most is {most}", "send those that are spoken of one by one");

    private static IReadOnlyCollection<string> SideWords { get; } = ["left", "right", "midline"];

    private static Message Error(int number, Location at, string text, string? label) =>
        new(number, Severity.Error, at, text) { Label = label };

    private static Message WithSpelling(Message message, string found, IReadOnlyCollection<string> known)
    {
        var closest = Spelling.Closest(found, known);
        return message with
        {
            Label = Spelling.Help(found, known),
            Fix = closest is null ? null : new Fix($"replace it by `{closest}`", WithoutQuotes(message.Location), closest),
        };
    }

    /// <summary>Of a text in quotes what lies between them: what replaces it stands there.</summary>
    private static Location WithoutQuotes(Location at) =>
        at.Span.Length >= 2 && at.Words is ['"' or '\'', .., var last] words && words[0] == last
            ? at with { Span = new TextSpan(at.Span.Start + 1, at.Span.Length - 2) }
            : at;
}
