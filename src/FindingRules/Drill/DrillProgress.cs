using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FindingRules.Drill;

/// <summary>
/// How a learner fared with each question, kept by the boxes of Leitner's card file (1972; from memory): a card answered
/// right goes up a box and rests twice as long, one answered wrong goes back to the first. Rest is counted in sessions, so
/// that no clock is needed. It names nobody: a learner is an opaque key, or nothing.
/// </summary>
public sealed record DrillProgress
{
    public const string FormatName = "findingrules-drill-progress";
    public const int CurrentVersion = 1;
    private const int LastBox = 5;
    private const int MostKey = 64;

    private static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        AllowDuplicateProperties = false,
        WriteIndented = true,
        NewLine = "\n",
    };

    public string Format { get; init; } = FormatName;

    public int Version { get; init; } = CurrentVersion;

    public required string Pack { get; init; }

    public string? Learner { get; init; }

    /// <summary>Sessions begun.</summary>
    public int Sessions { get; init; }

    public ImmutableSortedDictionary<string, DrillCard> Questions { get; init; } = NoCards;

    private static ImmutableSortedDictionary<string, DrillCard> NoCards { get; } =
        ImmutableSortedDictionary.Create<string, DrillCard>(StringComparer.Ordinal);

    /// <summary>Null with the reason where the bytes are no progress of this version.</summary>
    public static (DrillProgress? Progress, string? Why) Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var read = JsonSerializer.Deserialize<DrillProgress>(bytes, Form);
            if (read is null || read.Format != FormatName) return (null, $"its format is not `{FormatName}`");
            if (read.Version != CurrentVersion) return (null, $"its version is {read.Version}, expected {CurrentVersion}");
            return read.IsWhole()
                ? (read with { Questions = NoCards.AddRange(read.Questions) }, null)
                : (null, "its counts or keys cannot be right");
        }
        catch (JsonException)
        {
            return (null, "it is not JSON of this form");
        }
    }

    public byte[] ToBytes() => [.. JsonSerializer.SerializeToUtf8Bytes(this, Form), (byte)'\n'];

    /// <summary>Letters, digits, full stops, hyphens and low lines, one digit at least: a name seldom fits.</summary>
    public static bool IsOpaque(string learner) =>
        learner.Length is > 0 and <= MostKey && learner.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_')
        && learner.Any(char.IsAsciiDigit);

    public DrillProgress Begin() => this with { Sessions = Sessions + 1 };

    public DrillProgress With(string key, DrillVerdict verdict)
    {
        var card = Questions.GetValueOrDefault(key) ?? new DrillCard(1, 0, 0, 0);
        var next = verdict switch
        {
            DrillVerdict.Right => card with { Box = Math.Min(card.Box + 1, LastBox), Right = card.Right + 1 },
            DrillVerdict.ReasonIncomplete => card with { Right = card.Right + 1 },
            _ => card with { Box = 1, Wrong = card.Wrong + 1 },
        };
        return this with { Questions = Questions.SetItem(key, next with { Last = Sessions }) };
    }

    /// <summary>0: due; 1: never asked; 2: resting.</summary>
    internal int Turn(string key)
    {
        if (Questions.GetValueOrDefault(key) is not { } card) return 1;
        return Sessions - card.Last >= 1 << (card.Box - 1) ? 0 : 2;
    }

    private bool IsWhole() =>
        Sessions >= 0 && Questions is not null && (Learner is null || IsOpaque(Learner)) && !string.IsNullOrEmpty(Pack)
        && Questions.All(q => QuestionId.IsKey(q.Key)
            && q.Value is { Box: >= 1 and <= LastBox, Last: >= 0, Right: >= 0, Wrong: >= 0 } card && card.Last <= Sessions);
}

/// <param name="Box">1 to 5.</param>
/// <param name="Last">The session in which it was asked last.</param>
public sealed record DrillCard(int Box, int Last, int Right, int Wrong);
