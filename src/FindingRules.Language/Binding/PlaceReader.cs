using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>All places that the beginning of a phrase may mean, the forbidden ones with the reason.</summary>
internal sealed class PlaceReader(BindingContext context, PhraseSyntax phrase)
{
    private readonly PhrasePrefixes _prefixes = PhrasePrefixes.Of(context, phrase);

    // Only before assessed are there no words behind the prefixes.
    private string FirstWord => phrase.Words.IsEmpty ? "assessed" : phrase.Words[0].Text;

    private Location AtFirstWord => context.At(phrase.Words.IsEmpty ? phrase.Span : phrase.Words[0].Span);

    public List<PlaceCandidate> Read()
    {
        var places = new List<PlaceCandidate>();
        if (_prefixes.IsStudy)
        {
            places.Add(Study());
        }
        else
        {
            AddOwn(places);
            if (!phrase.Words.IsEmpty) AddNamed(places);
        }
        return [.. places.Select(Finish)];
    }

    private static PlaceCandidate Study() => new(Place.Study, Scope.Study, 0, "study");

    private PlaceCandidate Finish(PlaceCandidate place)
    {
        if (_prefixes.Problem is not null) place = place with { Problem = _prefixes.Problem };
        return _prefixes.IsEarlier
            ? place with { Place = place.Place with { IsEarlier = true }, SayAs = $"earlier {place.SayAs}" }
            : place;
    }

    private void AddOwn(List<PlaceCandidate> places)
    {
        switch (_prefixes.Relation)
        {
            case PlaceRelation.Own when context.Scope.IsStudy:
                places.Add(Study());
                break;
            case PlaceRelation.Own:
                places.Add(new PlaceCandidate(Place.Own, context.Scope, 0, context.Owner));
                if (!phrase.Words.IsEmpty) places.Add(Study());
                break;
            case PlaceRelation.Contralateral:
                places.Add(OtherSide(understood: 0));
                break;
            default:
                var at = AtFirstWord;
                places.Add(new PlaceCandidate(
                    Place.Own, context.Scope, 0, context.Owner, () => PlaceNameMessages.SideWithoutStructure(at, FirstWord)));
                break;
        }
    }

    private void AddNamed(List<PlaceCandidate> places)
    {
        var structure = context.Vocabulary.Structures.GetValueOrDefault(FirstWord);
        if (structure is not null) places.Add(Named(structure));
        if (!context.Vocabulary.Kinds.TryGetValue(FirstWord, out var kind)) return;
        var isOwn = context.Scope.Kind?.IsA(kind) ?? false;
        var structures = context.Vocabulary.StructuresOf(kind);
        if (isOwn && _prefixes.Relation == PlaceRelation.Own)
            places.Add(new PlaceCandidate(Place.Own, context.Scope, 1, context.Owner));
        else if (isOwn && _prefixes.Relation == PlaceRelation.Contralateral)
            places.Add(OtherSide(understood: 1));
        else if (structures is [var only] && only != structure)
            places.Add(Named(only));
        else if (structures.Length != 1)
            places.Add(SeveralOf(kind, structures.Length));
    }

    private PlaceCandidate Named(Structure structure)
    {
        var scope = context.OnlyStructure == structure
            ? context.Scope
            : new Scope($"each {structure.Name}", structure.Kind, [structure]);
        return _prefixes.Relation switch
        {
            PlaceRelation.Own => NamedPlainly(structure, scope),
            PlaceRelation.Ipsilateral => new PlaceCandidate(
                new Place(PlaceRelation.Ipsilateral, structure), scope, 1, $"ipsilateral {structure.Name}", WithoutSide(structure)),
            _ => NamedOnTheOtherSide(structure, scope),
        };
    }

    private PlaceCandidate NamedPlainly(Structure structure, Scope scope)
    {
        if (context.OnlyStructure == structure) return new PlaceCandidate(Place.Own, scope, 1, structure.Name);
        var candidate = new PlaceCandidate(
            new Place(PlaceRelation.Ipsilateral, structure), scope, 1, $"ipsilateral {structure.Name}");
        // What is there once needs no side: there is nothing to mistake it for.
        if (!structure.IsPaired && !context.Scope.IsStudy) return candidate with { SayAs = structure.Name };
        var at = context.At(phrase.Words[0].Span);
        return candidate with
        {
            Problem = context.HasSide ? () => PlaceNameMessages.NeedsSide(at, FirstWord) : NeedsQuantifier,
        };
    }

    private PlaceCandidate NamedOnTheOtherSide(Structure structure, Scope scope)
    {
        if (context.OnlyStructure == structure) return OtherSide(understood: 1);
        var at = context.At(phrase.Words[0].Span);
        return new PlaceCandidate(
            new Place(PlaceRelation.Contralateral, structure), scope, 1, $"contralateral {structure.Name}",
            structure.IsPaired ? WithoutSide(structure) : () => PlaceNameMessages.NoOtherSide(at, FirstWord));
    }

    private PlaceCandidate OtherSide(int understood)
    {
        var unpaired = context.Scope.Structures.FirstOrDefault(s => !s.IsPaired);
        Func<Message>? problem = context.Scope.IsStudy ? NoSide
            : unpaired is null ? null
            : () => PlaceNameMessages.NoOtherSide(context.At(phrase.Span), unpaired.Name);
        return new PlaceCandidate(
            new Place(PlaceRelation.Contralateral), context.Scope, understood, $"contralateral {context.Owner}", problem);
    }

    private PlaceCandidate SeveralOf(Kind kind, int count)
    {
        var at = context.At(phrase.Words[0].Span);
        return new PlaceCandidate(
            Place.Own, new Scope($"each {kind.Name}", kind, context.Vocabulary.StructuresOf(kind)), 1, kind.Name,
            context.Scope.IsStudy && _prefixes.Relation == PlaceRelation.Own
                ? NeedsQuantifier
                : () => PlaceNameMessages.KindOfSeveral(at, kind.Name, count));
    }

    private Func<Message>? WithoutSide(Structure structure) =>
        context.HasSide || (!structure.IsPaired && !context.Scope.IsStudy) ? null : NoSide;

    private Message NoSide() => PlaceNameMessages.NoSide(
        context.At(phrase.Prefixes[0].Span), _prefixes.Relation == PlaceRelation.Ipsilateral ? "ipsilateral" : "contralateral",
        context.Scope.Written);

    private Message NeedsQuantifier()
    {
        var word = phrase.Words[0].Span;
        var statement = context.Statement;
        var before = context.Written(TextSpan.Between(statement.Start, word.Start));
        var after = context.Written(TextSpan.Between(word.End, statement.End));
        var quantified = $"any {FirstWord} where ({$"{before} {after}".Trim()})";
        return PlaceNameMessages.NeedsQuantifier(
            context.At(word), context.At(statement), FirstWord, context.Scope.Written, quantified);
    }
}
