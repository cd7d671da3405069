using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>One finding of one subject (a fact of the study where the subject is the study), now or in the earlier study.</summary>
internal sealed record FindingSlot(bool IsEarlier, Subject Subject, Finding Finding) : IComparable<FindingSlot>
{
    public string Key => IsEarlier ? $"earlier {Subject.Key}" : Subject.Key;

    public int CompareTo(FindingSlot? other)
    {
        if (other is null) return 1;
        if (IsEarlier != other.IsEarlier) return IsEarlier ? 1 : -1;
        var bySubject = Subject.CompareTo(other.Subject);
        return bySubject != 0 ? bySubject : string.CompareOrdinal(Finding.Name, other.Finding.Name);
    }

    public static bool operator <(FindingSlot left, FindingSlot right) => left.CompareTo(right) < 0;

    public static bool operator >(FindingSlot left, FindingSlot right) => left.CompareTo(right) > 0;

    public static bool operator <=(FindingSlot left, FindingSlot right) => left.CompareTo(right) <= 0;

    public static bool operator >=(FindingSlot left, FindingSlot right) => left.CompareTo(right) >= 0;
}
