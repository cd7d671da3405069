using System.Runtime.CompilerServices;

namespace FindingRules.Workload;

/// <summary>
/// What a program without a rule language would hold of a study: a field for each finding. What was not sent is no number or
/// -1, so that no comparison with it is true.
/// </summary>
public struct SiteFacts
{
    public double Thickness { get; init; }

    public double Length { get; init; }

    public int Echo { get; init; }

    public int State { get; init; }

    public int Shadowing { get; init; }
}

[InlineArray(WorkloadSize.Structures)]
public struct StudyFacts
{
    private SiteFacts _first;
}

/// <summary>Writes the numbers of the rules that fire into the room given, and says how many they are.</summary>
public delegate int Firing(in StudyFacts study, int[] fired);

/// <summary>The same as an object, for engines that take objects only.</summary>
public sealed class SiteObject
{
    public int Structure { get; init; }

    public double Thickness { get; init; }

    public double Length { get; init; }

    public int Echo { get; init; }

    public int State { get; init; }

    public int Shadowing { get; init; }

    public static SiteObject Of(int structure, in SiteFacts facts) => new()
    {
        Structure = structure,
        Thickness = facts.Thickness,
        Length = facts.Length,
        Echo = facts.Echo,
        State = facts.State,
        Shadowing = facts.Shadowing,
    };
}

public static class WorkloadSize
{
    public const int Structures = 12;
    public const int Echoes = 4;
    public const int States = 5;
    public const int MostTenths = 200;
}
