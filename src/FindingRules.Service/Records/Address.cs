using System.Globalization;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Service.Records;

/// <summary>Reads the parts of an address that are not plain words, and keeps the first mistake.</summary>
internal sealed class Address
{
    private static readonly string[] Moments = ["yyyy-MM-dd", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"];

    public Message? Wrong { get; private set; }

    public Guid Id(string written)
    {
        if (Guid.TryParseExact(written, "D", out var id)) return id;
        return Refuse<Guid>("id", written, "the id of a record, such as `01890a5d-ac96-774b-bcce-b302099a8057`");
    }

    public long? Number(string name, string? written, long least, long most)
    {
        if (written is null) return null;
        var isNumber = long.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number);
        if (isNumber && number >= least && number <= most) return number;
        var upTo = most == long.MaxValue ? "" : $" to {most}";
        return Refuse<long?>(name, written, $"a whole number from {least}{upTo}");
    }

    /// <summary>A day stands for its first moment in UTC.</summary>
    public DateTimeOffset? Moment(string name, string? written)
    {
        if (written is null) return null;
        const DateTimeStyles style = DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal;
        if (DateTimeOffset.TryParseExact(written, Moments, CultureInfo.InvariantCulture, style, out var moment)) return moment;
        return Refuse<DateTimeOffset?>(name, written, "a day such as `2026-11-01`, or a moment such as `2026-11-01T12:00:00Z`");
    }

    public bool? Flag(string name, string? written) => written switch
    {
        null => null,
        "true" => true,
        "false" => false,
        _ => Refuse<bool?>(name, written, "`true` or `false`"),
    };

    public T Word<T>(string name, string? written, T otherwise, params (string Word, T Value)[] words)
    {
        if (written is null) return otherwise;
        foreach (var (word, value) in words)
            if (word == written) return value;
        Refuse<T>(name, written, Spelling.List([.. words.Select(w => w.Word)]));
        return otherwise;
    }

    public void Together(string name, string? written, string other, string? otherWritten)
    {
        if (written is not null && otherWritten is null) Wrong ??= RecordMessages.ParameterAlone(name, other);
    }

    private T? Refuse<T>(string name, string written, string expected)
    {
        Wrong ??= RecordMessages.AddressValue(name, written, expected);
        return default;
    }
}
