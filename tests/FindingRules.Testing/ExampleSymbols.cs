using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Testing;

/// <summary>The names of <c>tests/packs/example</c>, put together by hand: tests of the language read no YAML.</summary>
public static class ExampleSymbols
{
    private static readonly Location Here = new SourceText("symbols", "").Whole;
    private static readonly Rational HalfMillimetre = new(1, 2);

    public static Axis Surface { get; } = new("surface", ["bursal", "intrasubstance", "articular"], Here);

    public static Symbols Plain { get; } = Build(Vocabulary());

    /// <summary>The same with further structures, findings and facts that make some words mean two things.</summary>
    public static Symbols Crowded { get; } = Crowd();

    public static Scope Each(Symbols symbols, string name)
    {
        var vocabulary = symbols.Vocabulary;
        return vocabulary.Structures.TryGetValue(name, out var structure)
            ? new Scope($"each {name}", structure.Kind, [structure])
            : new Scope($"each {name}", vocabulary.Kinds[name], vocabulary.StructuresOf(vocabulary.Kinds[name]));
    }

    public static Finding Choice(string name, params string[] values) => new(name, new ChoiceType([.. values], null), Here);

    public static Finding Sign(string name) => new(name, new SignType(null), Here);

    public static Finding Measure(string name, Unit unit, int low, int high, Rational precision = default) =>
        new(name, new MeasureType(unit, Interval.Closed(unit.InBase * low, unit.InBase * high), precision, null, false), Here);

    public static Kind Kind(string name, Kind? like, params Finding[] findings) => new(
        name, like,
        (like?.Findings ?? Empty<Finding>()).AddRange(findings.Select(f => KeyValuePair.Create(f.Name, f))), Here);

    public static Topic Topic(string name, Scope scope, params string[] values) => new(name, scope, Here)
    {
        Values = [.. values.Select(v => new TopicValue(v, v, Wording(v), Certainty.Definite, null, Here))],
    };

    public static ImmutableSortedDictionary<string, T> ByName<T>(Func<T, string> name, params T[] items) =>
        Empty<T>().AddRange(items.Select(i => KeyValuePair.Create(name(i), i)));

    private static Vocabulary Vocabulary()
    {
        var tendon = Kind(
            "tendon", null,
            Choice("echo", "fibrillar", "hypoechoic", "anechoic", "heterogeneous"),
            Measure("thickness", Unit.Millimetre, 0, 30, HalfMillimetre),
            Choice("reangled", "persists", "resolves"), Sign("shadowing"));
        var cuff = Kind(
            "cuff-tendon", tendon, new Finding("fluid", new ExtentType(Surface, true), Here),
            Measure("tear-length", Unit.Millimetre, 1, 80, 1), Measure("defect-depth", Unit.Millimetre, 0, 20, HalfMillimetre));
        var biceps = Kind("biceps-tendon", tendon, Choice("position", "in-groove", "subluxed", "dislocated"));
        return Model.Vocabularies.Vocabulary.Empty with
        {
            Axes = ByName(a => a.Name, Surface),
            Kinds = ByName(k => k.Name, tendon, cuff, biceps),
            Structures = ByName(
                s => s.Name, Paired("supraspinatus", cuff), Paired("infraspinatus", cuff), Paired("subscapularis", cuff),
                Paired("biceps", biceps)),
            StudyFacts = ByName(
                f => f.Name, Choice("modality", "ultrasound", "radiograph", "mri"), Choice("radiograph", "negative", "positive"),
                Choice("suspected", "wood", "glass", "metal", "plastic", "plant", "other"),
                Choice("arm-position", "neutral", "crass", "modified-crass"), Sign("trauma"),
                Measure("age", Unit.Year, 0, 120), Measure("height", Unit.Centimetre, 40, 230)),
        };
    }

    private static Symbols Build(Vocabulary vocabulary)
    {
        var bare = new Symbols { Vocabulary = vocabulary };
        var (cuff, tendon, biceps) = (Each(bare, "cuff-tendon"), Each(bare, "tendon"), Each(bare, "biceps"));
        var cuffFindings = vocabulary.Kinds["cuff-tendon"].Findings;
        var share = new ArithmeticExpression(
            ArithmeticOperator.Divide, MeasureOf(cuffFindings["defect-depth"]), MeasureOf(cuffFindings["thickness"]), Dimension.None, Here);
        return bare with
        {
            Topics = ByName(
                t => t.Name, Topic("tear-depth", cuff, "full-thickness", "bursal-sided", "articular-sided"),
                Topic("tendon-state", tendon, "thickened", "regular"), Topic("cuff-state", Scope.Study, "several-torn"),
                Topic("biceps-state", biceps, "displaced"), Topic("tear-size", cuff, "small", "medium", "large", "massive")),
            NextSteps = ByName(s => s.Name, Step("ultrasound"), Step("re-angle"), Step("refer")),
            EvaluateSteps = ByName(
                s => s.Structure.Name, Evaluate(vocabulary, "subscapularis", "fluid", "echo"), Evaluate(vocabulary, "biceps", "position")),
            Cautions = ByName(c => c.Name, new Caution("position-overestimates", Wording("position"), [], Here)),
            DerivedMeasures = ByName(m => m.Name, new DerivedMeasure("depth-share", "share", cuff, Unit.Percent, share, Here)),
        };
    }

    private static Symbols Crowd()
    {
        var vocabulary = Vocabulary();
        var tendon = vocabulary.Kinds["tendon"];
        var wall = Kind(
            "wall", null, Choice("gap", "narrow", "wide"), Choice("edge", "sharp", "wide"), Sign("wide"), Measure("width", Unit.Millimetre, 0, 90),
            Choice("trauma-mark", "neutral"), Choice("arm-position", "neutral", "flexed"), Measure("tilt", Unit.Degree, -90, 90));
        vocabulary = vocabulary with
        {
            Kinds = vocabulary.Kinds.Add("wall", wall).Add("hoof", Kind("hoof", null, Sign("shod"))),
            Structures = vocabulary.Structures.Add("linea", new Structure("linea", wall, "linea", "trunk", isPaired: false, Here)),
            StudyFacts = vocabulary.StudyFacts.Add("echo-seen", Sign("echo-seen")),
        };
        var symbols = Build(vocabulary);
        return symbols with
        {
            Topics = symbols.Topics.Add("other-state", Topic("other-state", Each(symbols, "tendon"), "thickened", "refer"))
                .Add("echo", Topic("echo", Each(symbols, "tendon"), "fibrillar")),
            EvaluateSteps = symbols.EvaluateSteps.Add("linea", Evaluate(vocabulary, "linea", "width")),
            Cautions = symbols.Cautions.Add("refer", new Caution("refer", Wording("refer"), [], tendon.DeclaredAt)),
        };
    }

    private static MeasureExpression MeasureOf(Finding finding) =>
        new(Place.Own, finding, ((MeasureType)finding.Type).Unit.Dimension, Here);

    private static Structure Paired(string name, Kind kind) => new(name, kind, $"{name} tendon", "shoulder", isPaired: true, Here);

    private static NextStep Step(string name) => new(name, Wording(name), Urgency.Routine, null, [], Here);

    private static EvaluateStep Evaluate(Vocabulary vocabulary, string structure, params string[] findings)
    {
        var whole = vocabulary.Structures[structure];
        return new EvaluateStep(whole, Wording(structure), Urgency.Routine, [.. findings.Select(f => whole.Kind.Findings[f])], Here);
    }

    private static Wording Wording(string text) => new(text, [new WordingText(text)], Here);

    private static ImmutableSortedDictionary<string, T> Empty<T>() =>
        ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);
}
