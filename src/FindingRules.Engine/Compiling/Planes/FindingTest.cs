using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>Tells in which cells a finding's value lies.</summary>
internal abstract class FindingTest(bool isOfStudy, int slot, int cellCount)
{
    public bool IsOfStudy { get; } = isOfStudy;

    public int Slot { get; } = slot;

    public int CellCount { get; } = cellCount;

    /// <summary>A measure with a precision.</summary>
    public virtual bool IsWidened => false;

    public abstract Cells CellsOf(FindingValue? value);

    /// <summary>With the measuring error added.</summary>
    public virtual Cells WidenedCellsOf(FindingValue? value) => CellsOf(value);

    public static FindingTest Make(TestKey key, IEnumerable<Literal> literals) => key.Sort switch
    {
        TestSort.Choice => new ChoiceTest(key, (ChoiceType)key.Finding.Type),
        TestSort.Sign => new SignTest(key),
        TestSort.Extent => new ExtentTest(key),
        TestSort.Assessed => new AssessedTest(key),
        TestSort.NotAssessable => new NotAssessableTest(key),
        _ => new MeasureTest(key, ((MeasureType)key.Finding.Type).Precision, literals.Cast<MeasureLiteral>()),
    };
}

internal sealed class ChoiceTest(TestKey key, ChoiceType type) : FindingTest(key.IsOfStudy, key.Slot, type.Values.Length)
{
    private readonly string[] _values = [.. type.Values];

    public override Cells CellsOf(FindingValue? value)
    {
        if (value is not ChoiceValue choice) return Cells.Unknown;
        // All are looked at, for a branch at the right one would be guessed wrong mostly. Texts of one pack are mostly one object.
        var (values, sent, found) = (_values, choice.Value, 0);
        for (var i = 0; i < values.Length; i++) found |= (i + 1) & -Convert.ToInt32(ReferenceEquals(values[i], sent));
        return found > 0 ? Cells.One(found - 1) : CellOfEqual(sent);
    }

    private Cells CellOfEqual(string sent)
    {
        var at = Array.IndexOf(_values, sent);
        return at >= 0 ? Cells.One(at) : Cells.Strange;
    }
}

internal sealed class SignTest(TestKey key) : FindingTest(key.IsOfStudy, key.Slot, 2)
{
    public override Cells CellsOf(FindingValue? value) => value is SignValue sign ? Cells.Of(sign.IsPresent) : Cells.Unknown;
}

internal sealed class AssessedTest(TestKey key) : FindingTest(key.IsOfStudy, key.Slot, 2)
{
    public override Cells CellsOf(FindingValue? value) => Cells.Of(value is not (null or NotAssessableValue));
}

internal sealed class NotAssessableTest(TestKey key) : FindingTest(key.IsOfStudy, key.Slot, 2)
{
    public override Cells CellsOf(FindingValue? value) => Cells.Of(value is NotAssessableValue);
}

internal sealed class ExtentTest(TestKey key) : FindingTest(key.IsOfStudy, key.Slot, 2)
{
    private readonly ExtentRelation _relation = key.Relation;
    private readonly int _from = key.From;
    private readonly int _to = key.To;

    public override Cells CellsOf(FindingValue? value) =>
        value is ExtentValue extent ? Cells.Of(ExtentNode.Holds(extent, _relation, _from, _to)) : Cells.Unknown;
}
