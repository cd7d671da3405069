namespace FindingRules.Testing.Broken;

/// <summary>A study for the example pack with one thing wrong.</summary>
/// <param name="Name">What was done to it, as a failing test shows it.</param>
public sealed record BrokenStudy(string Name, string Text)
{
    /// <summary>A study that uses every form a study has, and is in order.</summary>
    public const string Whole =
        """
        { "study": "S-1", "pack": "example", "supersedes": "S-0",
          "protocols": [{ "protocol": "shoulder", "side": "right" }],
          "facts": { "modality": "ultrasound", "trauma": true, "age": "61 years", "height": { "value": 180, "unit": "cm" } },
          "subjects": [
            { "structure": "supraspinatus", "side": "right",
              "findings": { "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists", "shadowing": "absent",
                "tear-length": "14 mm", "thickness": { "value": 6.1, "unit": "mm" } } },
            { "structure": "infraspinatus", "side": "right", "normal": true },
            { "structure": "subscapularis", "side": "right", "lesions": [
              { "id": "L1", "findings": { "fluid": ["bursal", "articular"], "defect-depth": { "value": "2", "unit": "mm", "comparator": "<" } } },
              { "id": "L2", "findings": { "fluid": "none", "tear-length": "1 cm to 2 cm" } }] },
            { "structure": "biceps", "side": "right", "notAssessable": true },
            { "structure": "biceps", "side": "left", "findings": { "position": "not-assessable", "echo": "fibrillar" } }],
          "earlier": { "facts": { "modality": "mri" },
            "subjects": [{ "structure": "supraspinatus", "side": "right", "findings": { "tear-length": "<= 1 cm" } }] } }
        """;

    internal static BrokenStudy Replaced(string words, string instead)
    {
        var at = Whole.IndexOf(words, StringComparison.Ordinal);
        if (at < 0) throw new InvalidOperationException($"The study does not say: {words}");
        return new BrokenStudy($"{words} became {Shown(instead)}", Whole[..at] + instead + Whole[(at + words.Length)..]);
    }

    private static string Shown(string text) => text.Length <= 60 ? text : $"{text[..60]}… ({text.Length})";

    public override string ToString() => Name;
}
