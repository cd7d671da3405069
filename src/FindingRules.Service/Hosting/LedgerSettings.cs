using System.Globalization;
using System.Text.RegularExpressions;
using FindingRules.Ledger;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Records;

namespace FindingRules.Service.Hosting;

/// <summary>Where records are kept, and for how long.</summary>
/// <param name="Location">Null where none are kept.</param>
/// <param name="Actor">Who requests are recorded as from.</param>
internal sealed partial record LedgerSettings(LedgerLocation? Location, string? KeyFile, int? RetentionDays, string Actor)
{
    public const string Place = "Ledger";
    public const string Key = "LedgerKey";
    public const string Days = "RetentionDays";
    public const string Sender = "Actor";
    private const int MostDays = 100 * 366;

    public static LedgerSettings Read(ServiceOptions options, IConfigurationSection section, MessageBag messages)
    {
        var place = options.Ledger ?? section[Place] ?? ServiceOptions.DefaultLedger;
        var location = place == ServiceOptions.NoLedger ? null : LedgerLocation.Read(place, messages);
        return new LedgerSettings(
            location is LedgerLocation.SqliteFile file ? file with { Path = Path.GetFullPath(file.Path) } : location,
            options.LedgerKey ?? section[Key],
            ReadDays(options.RetentionDays?.ToString(CultureInfo.InvariantCulture) ?? section[Days], messages),
            ReadActor(section[Sender], messages));
    }

    // It stays in the record for ever, so it is a code and no text.
    private static string ReadActor(string? written, MessageBag messages)
    {
        if (string.IsNullOrEmpty(written)) return Actors.Anonymous;
        if (Code().IsMatch(written)) return written;
        messages.Add(ServiceMessages.Setting(
            $"FindingRules:{Sender}", written, "a name of up to 64 small letters, digits and hyphens, such as `ward-3`"));
        return Actors.Anonymous;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*(?<!.{65})$")]
    private static partial Regex Code();

    private static int? ReadDays(string? written, MessageBag messages)
    {
        if (string.IsNullOrEmpty(written)) return null;
        var isNumber = int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var days);
        if (isNumber && days is > 0 and <= MostDays) return days;
        messages.Add(ServiceMessages.Setting($"FindingRules:{Days}", written, $"a whole number of days from 1 to {MostDays}"));
        return null;
    }
}
