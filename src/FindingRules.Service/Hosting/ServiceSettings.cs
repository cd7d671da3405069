using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;

namespace FindingRules.Service.Hosting;

/// <summary>The options as started with, filled up from the settings and the defaults, and checked.</summary>
internal sealed partial record ServiceSettings(
    ImmutableArray<string> PackFolders, ImmutableArray<string> Urls, ServiceLimits Limits, LedgerSettings Ledger)
{
    private const int Most = 1_000_000_000;
    private static readonly SortedSet<string> Known = new(
        ["Packs", "Limits", LedgerSettings.Place, LedgerSettings.Key, LedgerSettings.Days, LedgerSettings.Sender],
        StringComparer.OrdinalIgnoreCase);

    public LoadLimits ForStudies => LoadLimits.Default with
    {
        StudyBytes = Limits.StudyBytes,
        DocumentDepth = Limits.StudyDepth,
    };

    public static ServiceSettings Read(ServiceOptions options, IConfiguration configuration, MessageBag messages)
    {
        var section = configuration.GetSection("FindingRules");
        foreach (var part in section.GetChildren().Where(p => !Known.Contains(p.Key)))
            messages.Add(ServiceMessages.UnknownSetting(part.Path, [.. Known.Select(k => $"FindingRules:{k}")]));
        var folders = options.PackFolders.IsDefaultOrEmpty
            ? [.. section.GetSection("Packs").GetChildren().Select(c => c.Value).OfType<string>()]
            : options.PackFolders;
        return new ServiceSettings(
            CheckFolders(folders, messages),
            ReadUrls(options, configuration, messages),
            options.Limits ?? ReadLimits(section.GetSection("Limits"), messages),
            LedgerSettings.Read(options, section, messages));
    }

    private static ImmutableArray<string> CheckFolders(ImmutableArray<string> folders, MessageBag messages)
    {
        if (folders.IsEmpty)
            messages.Add(ServiceMessages.NoPackFolder());
        foreach (var folder in folders.Where(f => !Directory.Exists(f)))
            messages.Add(ToolMessages.FileNotFound(folder));
        return [.. folders.Where(f => f.Length > 0).Select(Path.GetFullPath).Distinct(StringComparer.Ordinal)];
    }

    private static ImmutableArray<string> ReadUrls(ServiceOptions options, IConfiguration configuration, MessageBag messages)
    {
        ImmutableArray<string> urls = !options.Urls.IsDefaultOrEmpty
            ? options.Urls
            : configuration["urls"] is { Length: > 0 } set ? [.. set.Split(';')] : [ServiceOptions.DefaultUrl];
        foreach (var url in urls.Where(u => !IsUrl(u)))
            messages.Add(ServiceMessages.Setting("Urls", url, $"an address such as `{ServiceOptions.DefaultUrl}`"));
        return urls;
    }

    // A star or a plus in place of the host is understood by the server and by no reader of addresses.
    private static bool IsUrl(string url) =>
        Uri.TryCreate(AnyHost().Replace(url, "$1any"), UriKind.Absolute, out var read) && read.Scheme is "http" or "https";

    [GeneratedRegex(@"^(https?:/{2})[*+](?=[:/]|$)")]
    private static partial Regex AnyHost();

    private static ServiceLimits ReadLimits(IConfigurationSection section, MessageBag messages)
    {
        var known = new SortedSet<string>(StringComparer.Ordinal);
        var standard = new ServiceLimits();
        var limits = new ServiceLimits
        {
            StudyBytes = Number(nameof(ServiceLimits.StudyBytes), standard.StudyBytes, 1),
            StudyDepth = Number(nameof(ServiceLimits.StudyDepth), standard.StudyDepth, 1),
            ConcurrentReadings = Number(nameof(ServiceLimits.ConcurrentReadings), standard.ConcurrentReadings, 1),
            WaitingReadings = Number(nameof(ServiceLimits.WaitingReadings), standard.WaitingReadings, 0),
            ReadingMilliseconds = Number(nameof(ServiceLimits.ReadingMilliseconds), standard.ReadingMilliseconds, 1),
            StopMilliseconds = Number(nameof(ServiceLimits.StopMilliseconds), standard.StopMilliseconds, 0),
            EarlierPacks = Number(nameof(ServiceLimits.EarlierPacks), standard.EarlierPacks, 0),
            QuietMilliseconds = Number(nameof(ServiceLimits.QuietMilliseconds), standard.QuietMilliseconds, 1),
            LookMilliseconds = Number(nameof(ServiceLimits.LookMilliseconds), standard.LookMilliseconds, 1),
        };
        foreach (var setting in section.GetChildren().Where(s => !known.Contains(s.Key, StringComparer.OrdinalIgnoreCase)))
            messages.Add(ServiceMessages.UnknownSetting(setting.Key, known));
        return limits;

        int Number(string name, int otherwise, int least)
        {
            known.Add(name);
            var written = section[name];
            if (written is null) return otherwise;
            if (int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                && number >= least && number <= Most) return number;
            messages.Add(ServiceMessages.Setting(
                $"FindingRules:Limits:{name}", written, $"a whole number from {least} to {Most}"));
            return otherwise;
        }
    }
}
