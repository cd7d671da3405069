namespace FindingRules.Engine.Compiling.Planes;

/// <summary>The cells that a value may lie in, as a run.</summary>
internal readonly record struct Cells(int First, int Last)
{
    public static Cells Unknown { get; } = new(-1, -1);

    /// <summary>A value that no cell holds: the conditions themselves must be asked.</summary>
    public static Cells Strange { get; } = new(-2, -3);

    public bool IsStrange => First == Strange.First;

    /// <summary>Zero where it is one cell, or unknown.</summary>
    public int Width => First ^ Last;

    public static Cells One(int cell) => new(cell, cell);

    public static Cells Of(bool holds) => One(holds ? 1 : 0);
}
