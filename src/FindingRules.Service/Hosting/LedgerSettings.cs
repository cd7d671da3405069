using System.Globalization;
using FindingRules.Ledger;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Service.Hosting;

/// <summary>Where records are kept, and for how long.</summary>
/// <param name="Location">Null where none are kept.</param>
internal sealed record LedgerSettings(LedgerLocation? Location, string? KeyFile, int? RetentionDays)
{
    public const string Place = "Ledger";
    public const string Key = "LedgerKey";
    public const string Days = "RetentionDays";
    private const int MostDays = 100 * 366;

    public static LedgerSettings Read(ServiceOptions options, IConfigurationSection section, MessageBag messages)
    {
        var place = options.Ledger ?? section[Place] ?? ServiceOptions.DefaultLedger;
        var location = place == ServiceOptions.NoLedger ? null : LedgerLocation.Read(place, messages);
        return new LedgerSettings(
            location is LedgerLocation.SqliteFile file ? file with { Path = Path.GetFullPath(file.Path) } : location,
            options.LedgerKey ?? section[Key],
            ReadDays(options.RetentionDays?.ToString(CultureInfo.InvariantCulture) ?? section[Days], messages));
    }

    private static int? ReadDays(string? written, MessageBag messages)
    {
        if (string.IsNullOrEmpty(written)) return null;
        var isNumber = int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var days);
        if (isNumber && days is > 0 and <= MostDays) return days;
        messages.Add(ServiceMessages.Setting($"FindingRules:{Days}", written, $"a whole number of days from 1 to {MostDays}"));
        return null;
    }
}
