using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR7xxx: what the HTTP service says of a request, of itself and of its pack folders.</summary>
public static class ServiceMessages
{
    private const string NoReading = "there is no reading: nothing can be taken from this answer about the study";

    public static Message NothingHere(string path) =>
        new(7001, Severity.Error, Request(), $"there is nothing at `{path}`")
        {
            Label = "every address is listed at `/openapi/v1.json`",
        };

    public static Message MethodNotAnswered(string method, string path, string allowed) =>
        new(
            7002, Severity.Error, Request(),
            $"`{method}` is not answered at `{path}`, only {Spelling.List(allowed.Split(", "), "and")}");

    public static Message ContentType(string? found, string expected = "application/json") =>
        new(7003, Severity.Error, Request(), found is null
            ? $"the request does not say what it holds, expected the content type `{expected}`"
            : $"the request says it holds `{found}`, expected `{expected}` in UTF-8, not compressed")
        {
            Label = $"send the header `Content-Type: {expected}`",
        };

    public static Message RequestTooLarge(long most) =>
        new(7004, Severity.Error, Request(), $"the request holds more than {most} bytes, the most that is taken")
        {
            Label = "send one study for each request, or raise the limit in the settings of the service",
        };

    public static Message NotJson() =>
        new(7005, Severity.Error, Request(), "the request is not well-formed JSON, expected one study");

    public static Message StudyWrong(string pack, int mistakes) =>
        new(7006, Severity.Error, Request(), mistakes == 1
            ? $"one part of the study does not fit the pack `{pack}`, and `messages` says which"
            : $"{mistakes} parts of the study do not fit the pack `{pack}`, and `messages` says which")
        {
            Label = NoReading,
        };

    public static Message UnknownParameter(string found, IReadOnlyCollection<string> known) =>
        new(7007, Severity.Error, Request(), $"the address says `{found}`, expected {Spelling.List(known)} or nothing after the `?`")
        {
            Label = Spelling.Help(found, known),
        };

    public static Message NotWhole() =>
        new(7008, Severity.Error, Request(), "the request broke off or came too slowly, expected all of it");

    public static Message BadRequest(int status) =>
        new(7009, Severity.Error, Request(), $"the request could not be taken (HTTP {status}), expected a request of HTTP/1.1 or HTTP/2");

    public static Message NoPackInForce() =>
        new(7010, Severity.Error, Request(), "no pack is in force, expected at least one in the pack folders")
        {
            Label = "`GET /v1/packs` says which folders were refused and why",
        };

    public static Message PackNotInForce(Location at, string found, IReadOnlyCollection<string> inForce) =>
        new(7011, Severity.Error, at, $"no pack called `{found}` is in force, expected {Spelling.List(inForce)}")
        {
            Label = Spelling.Closest(found, inForce) is { } closest ? $"did you mean `{closest}`?" : null,
        };

    public static Message PackNotSaid(IReadOnlyCollection<string> inForce) =>
        new(7012, Severity.Error, Request(), $"the study does not say which pack reads it, expected {Spelling.List(inForce)}")
        {
            Label = "say it in the study as `\"pack\"`, or in the address as `?pack=`",
        };

    public static Message TwoPacksSaid(Location at, string inStudy, string inAddress) =>
        new(7013, Severity.Error, at, $"the study says the pack `{inStudy}` and the address says `{inAddress}`, expected one of them");

    public static Message NoSuchPack(string found) =>
        new(7014, Severity.Error, Request(), $"no pack in force is called `{found}` and none seen since the start has that text digest")
        {
            Label = "`GET /v1/packs` lists them; an earlier one is kept by its text digest while there is room",
        };

    public static Message NoSuchFile(string found, IReadOnlyCollection<string> files) =>
        new(7015, Severity.Error, Request(), $"the pack has no file `{found}`")
        {
            Label = Spelling.Closest(found, files) is { } closest
                ? $"did you mean `{closest}`?"
                : "the pack's own answer lists its files",
        };

    public static Message NoSuchRule(string found, IReadOnlyCollection<string> rules) =>
        new(7016, Severity.Error, Request(), $"the pack has no rule `{found}`")
        {
            Label = Spelling.Closest(found, rules) is { } closest
                ? $"did you mean `{closest}`?"
                : "the pack's own answer lists its rules",
        };

    public static Message NoSuchCode(string found) =>
        new(7017, Severity.Error, Request(), $"there is no message with the code `{found}`")
        {
            Label = "`GET /v1/codes` lists them",
        };

    public static Message ReadingFailed() =>
        new(7020, Severity.Error, Request(), "the evaluation failed through a fault of the service, not of the study")
        {
            Label = NoReading,
        };

    public static Message ReadingLate(int milliseconds) =>
        new(7021, Severity.Error, Request(), $"the evaluation was not done within {milliseconds} ms, the most it may take")
        {
            Label = NoReading,
        };

    public static Message Busy(int running, int waiting) =>
        new(7022, Severity.Error, Request(), $"{running} studies are being read and {waiting} wait, the most of each")
        {
            Label = $"send it again in a second; {NoReading}",
        };

    public static Message Fault() =>
        new(7023, Severity.Error, Request(), "the service failed through a fault of its own");

    public static Message FolderGone(string folder) =>
        new(7030, Severity.Error, Folder(folder), $"`{folder}` holds no `pack.yaml` any more, expected the pack that is in force")
        {
            Label = "the pack stays in force until the service starts again",
        };

    public static Message NameTaken(string folder, string name, string other) =>
        new(
            7031, Severity.Error, Folder(folder),
            $"`{folder}` holds a pack called `{name}` and so does `{other}`, expected each name once");

    public static Message FolderWithoutPack(string folder) =>
        new(7032, Severity.Error, Folder(folder), $"`{folder}` holds no pack, expected a `pack.yaml` in it or in folders in it");

    public static Message AddressNotUsable(string urls, string why) =>
        new(7040, Severity.Error, new SourceText("serve", "").Whole, $"the service cannot listen at `{urls}`: {why}")
        {
            Label = "choose another address or port, or stop what uses it",
        };

    public static Message Setting(string name, string found, string expected) =>
        new(7041, Severity.Error, Settings(), $"the setting `{name}` is `{found}`, expected {expected}");

    public static Message NoPackFolder() =>
        new(7043, Severity.Error, Settings(), "no pack folder is named, expected at least one")
        {
            Label = "name it after `findingrules serve`, or in the settings of the service",
        };

    public static Message UnknownSetting(string name, IReadOnlyCollection<string> known) =>
        new(7042, Severity.Error, Settings(), $"there is no setting `{name}`, expected {Spelling.List(known)}")
        {
            Label = Spelling.Closest(name, known) is { } closest ? $"did you mean `{closest}`?" : null,
        };

    private static Location Request() => new SourceText("request", "").Whole;

    private static Location Settings() => new SourceText("settings", "").Whole;

    private static Location Folder(string folder) => new SourceText(folder, "").Whole;
}
