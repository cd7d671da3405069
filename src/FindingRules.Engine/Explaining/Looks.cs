using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Conditions;
using FindingRules.Model.Explanations;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining;

/// <summary>
/// What a statement looked at: the first choice that made it true, or every one that did not. Topics that it tested are
/// handed to <paramref name="answer"/>.
/// </summary>
internal sealed class Looks(Examination examination, StudyPlaces places, Func<int, TopicNode, TopicStatement, AnswerKey?> answer)
{
    public ImmutableArray<Look> Of(Statement statement, StatementNode node, int instance, Truth truth)
    {
        var looks = ImmutableArray.CreateBuilder<Look>();
        foreach (var chosen in node.Choices(examination, instance))
        {
            if (node.Test(examination, chosen, isWidened: false) != truth) continue;
            looks.Add(Make(statement, node, instance, chosen, truth));
            if (truth == Truth.True) break;
        }
        return looks.ToImmutable();
    }

    private Look Make(Statement statement, StatementNode node, int instance, int[] chosen, Truth truth)
    {
        SeenValue Value(Place place, Finding finding) => Seen(place, finding, node, instance, chosen);
        return statement switch
        {
            ValueStatement s => new Look(truth, [Value(s.Place, s.Finding)], null, null),
            SignStatement s => new Look(truth, [Value(s.Place, s.Finding)], null, null),
            ExtentStatement s => new Look(truth, [Value(s.Place, s.Finding)], null, null),
            AssessedStatement { Finding: { } finding } s => new Look(truth, [Value(s.Place, finding)], null, null),
            NotAssessableStatement s => new Look(truth, [Value(s.Place, s.Finding)], null, null),
            AssessedStatement s => new Look(truth, [Whole(s, instance, chosen[^1], truth)], null, null),
            TopicStatement s => Topic(s, (TopicNode)node, instance, chosen[^1], truth),
            ComparisonStatement s => Measured(statement, [s.Left, s.Right]),
            BetweenStatement s => Measured(statement, [s.Value, s.Low, s.High]),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

        Look Measured(Statement compared, ImmutableArray<QuantityExpression> operands) => new(
            truth,
            [.. operands.SelectMany(o => MeasuresIn.Of(o, Place.Own)).Distinct().Select(m => Value(m.Place, m.Finding))],
            new Calculations(examination, node, chosen).Of(compared), null);
    }

    private Look Topic(TopicStatement statement, TopicNode node, int instance, int at, Truth truth)
    {
        if (at >= 0 && answer(at, node, statement) is { } key) return new Look(truth, [], null, key);
        var subject = SubjectAt(statement.Place, instance, at);
        var (whose, title) = (Key(statement.Place, subject), Title(statement.Place, subject));
        return new Look(
            truth, [new SeenValue(whose, title, statement.Topic.Name, statement.Topic.Title, null, "not-sent", null)], null, null);
    }

    private SeenValue Whole(AssessedStatement statement, int instance, int at, Truth truth)
    {
        var subject = SubjectAt(statement.Place, instance, at);
        return new SeenValue(
            Key(statement.Place, subject), Title(statement.Place, subject), "structure", "structure",
            truth == Truth.True ? "assessed" : null, truth == Truth.True ? "sent" : "not-sent", null);
    }

    private SeenValue Seen(Place place, Finding finding, StatementNode node, int instance, int[] chosen)
    {
        var at = node.Places.IndexOf(place) is var i and >= 0 ? chosen[i] : -1;
        var slot = examination.Network.Slots[finding];
        var value = examination.ValueAt(at, slot);
        var subject = SubjectAt(place, instance, at);
        var origin = value switch
        {
            null => "not-sent",
            NotAssessableValue => "not-assessable",
            _ when examination[at].IsFilled is { } filled && filled[slot] => "normal",
            _ => "sent",
        };
        return new SeenValue(
            Key(place, subject), Title(place, subject), finding.Name, finding.Title,
            value is null or NotAssessableValue ? null : ValueWords.Of(value), origin,
            value is null || origin == "normal" || subject is null ? null : places.Of(place.IsEarlier, subject, finding));
    }

    private Subject? SubjectAt(Place place, int instance, int at) =>
        at >= 0 ? examination[at].Subject : MissingFinder.SubjectOf(examination, place, instance);

    private static string Key(Place place, Subject? subject) => $"{(place.IsEarlier ? "earlier " : "")}{subject?.Key ?? Elsewhere(place)}";

    private static string Title(Place place, Subject? subject) =>
        (subject?.Title ?? Elsewhere(place)) + (place.IsEarlier ? " in the earlier study" : "");

    /// <summary>Nobody can say which side is meant.</summary>
    private static string Elsewhere(Place place) => place.Structure?.Name ?? "other side";
}

/// <summary>The measures that a quantity is worked out from, with the places they are taken from.</summary>
internal static class MeasuresIn
{
    public static IEnumerable<(Place Place, Finding Finding)> Of(QuantityExpression expression, Place from) => expression switch
    {
        MeasureExpression measure => [(PlaceComposition.From(from, measure.Place), measure.Finding)],
        DerivedExpression derived => Of(derived.Measure.Is, PlaceComposition.From(from, derived.Place)),
        ArithmeticExpression sum => Of(sum.Left, from).Concat(Of(sum.Right, from)),
        _ => [],
    };
}
