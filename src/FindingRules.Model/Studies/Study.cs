using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Studies;

/// <summary>What the reporting system sent, checked against a vocabulary. Holds no identity: the key is opaque.</summary>
public sealed record Study
{
    public required string Key { get; init; }

    public string? PackName { get; init; }

    /// <summary>The key of the study that this one amends.</summary>
    public string? Supersedes { get; init; }

    public ImmutableArray<ProtocolUse> Protocols { get; init; } = [];

    public Findings Facts { get; init; } = Findings.None;

    public ImmutableArray<StudySubject> Subjects { get; init; } = [];

    /// <summary>The findings of an earlier study, where there is one.</summary>
    public ImmutableArray<StudySubject>? Earlier { get; init; }

    /// <summary>The facts of the earlier study.</summary>
    public Findings EarlierFacts { get; init; } = Findings.None;

    public required Location Location { get; init; }
}

public sealed record ProtocolUse(Protocol Protocol, Side Side, Location Location);

/// <summary>One structure on one side.</summary>
/// <param name="IsNormal">Each finding's declared normal value holds, unless a finding sent says otherwise.</param>
/// <param name="IsNotAssessable">It could not be seen: nothing is known of it and nothing is asked.</param>
public sealed record StudySubject(
    Structure Structure, Side Side, bool IsNormal, bool IsNotAssessable, Findings Findings,
    ImmutableArray<Lesion> Lesions, Location Location);

public sealed record Lesion(string Id, Findings Findings, Location Location)
{
    /// <summary>So many are told apart in one structure.</summary>
    public const int Most = 64;
}

/// <summary>Findings as sent, by name.</summary>
public sealed record Findings
{
    private ImmutableSortedDictionary<string, SentFinding>? _byName;

    public Findings(ImmutableSortedDictionary<string, SentFinding> byName) => (_byName, InOrder) = (byName, [.. byName.Values]);

    private Findings(ImmutableArray<SentFinding> inOrder) => InOrder = inOrder;

    public static Findings None { get; } = new([]);

    public ImmutableSortedDictionary<string, SentFinding> ByName => _byName ??= InOrder.ToImmutableSortedDictionary(
        f => f.Finding.Name, f => f, StringComparer.Ordinal);

    /// <summary>The same, to be walked through.</summary>
    public ImmutableArray<SentFinding> InOrder { get; }

    /// <summary>Each finding at most once.</summary>
    public static Findings Of(List<SentFinding> findings) =>
        new(ImmutableArray.CreateRange(findings).Sort(static (a, b) => string.CompareOrdinal(a.Finding.Name, b.Finding.Name)));

    public SentFinding? Find(string name)
    {
        foreach (var sent in InOrder)
            if (sent.Finding.Name == name)
                return sent;
        return null;
    }
}

public sealed record SentFinding(Finding Finding, FindingValue Value, Location Location);

public abstract record FindingValue;

public sealed record ChoiceValue(string Value) : FindingValue
{
    public override string ToString() => Value;
}

public sealed record SignValue(bool IsPresent) : FindingValue
{
    public override string ToString() => IsPresent ? "present" : "absent";
}

/// <summary>All the values it may be, in base units, and the unit to show it in.</summary>
/// <param name="IsBound">Sent as a bound or a range, or filled in from a normal range: not one measured number.</param>
/// <param name="Shown">As a person reads it: 14 mm, less than 2 mm.</param>
public sealed record MeasuredValue(Interval Interval, Unit Unit, bool IsBound, string Shown) : FindingValue
{
    public Interval Interval
    {
        get;
        init => (field, Nearest) = (value, NearestTo(value));
    } = Interval;

    /// <summary>Near the one value that it has, to find one's place quickly; no number where it may have several.</summary>
    public double Nearest { get; private init; } = NearestTo(Interval);

    /// <summary>Filled in from a normal range: nobody measured it, so no measuring error widens it.</summary>
    public bool IsFromNormal { get; init; }

    /// <summary>All the values it may have with the measuring error added.</summary>
    public Interval Widened(Rational precision) => IsFromNormal ? Interval : Interval.Widen(precision);

    private static double NearestTo(in Interval interval) => interval.IsPoint ? interval.Low!.Value.ToDouble() : double.NaN;

    public override string ToString() => Shown;
}

/// <summary>Intervals of point indices, in order, that do not overlap; none at all means absent.</summary>
public sealed record ExtentValue(Axis Axis, ImmutableArray<Stretch> Stretches) : FindingValue
{
    public bool Equals(ExtentValue? other) => other is not null && Axis == other.Axis && Stretches.SequenceEqual(other.Stretches);

    public override int GetHashCode() => Stretches.Length;

    public override string ToString() => Stretches.IsEmpty
        ? "none"
        : string.Join(" and ", Stretches.Select(s =>
            s.From == s.To ? Axis.Points[s.From] : $"{Axis.Points[s.From]} to {Axis.Points[s.To]}"));
}

public readonly record struct Stretch(int From, int To);

/// <summary>It was looked for and could not be judged: unknown, and never asked for again.</summary>
public sealed record NotAssessableValue : FindingValue
{
    public const string Word = "not-assessable";

    public override string ToString() => "not assessable";
}
