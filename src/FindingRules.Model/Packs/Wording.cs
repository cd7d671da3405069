using System.Collections.Immutable;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Packs;

/// <summary>A sentence with places to fill in, kept apart from logic.</summary>
public sealed record Wording(string Written, ImmutableArray<WordingPart> Parts, Location DeclaredAt);

public abstract record WordingPart;

public sealed record WordingText(string Text) : WordingPart;

/// <summary>
/// A place such as <c>{, tear-length}</c>. With text around the name the whole place vanishes where there is nothing
/// to fill in; without, it then says "not stated".
/// </summary>
public sealed record WordingPlace(string Before, WordingSource Source, string After) : WordingPart
{
    public bool IsOptional => Before.Length + After.Length > 0;
}

/// <summary>What fills a place.</summary>
public abstract record WordingSource;

/// <summary>The subject's title with side and lesion: right supraspinatus tendon.</summary>
public sealed record SubjectSource : WordingSource;

public sealed record FindingSource(Finding Finding) : WordingSource;

public sealed record FactSource(Finding Fact) : WordingSource;

public sealed record DerivedSource(DerivedMeasure Measure) : WordingSource;

public sealed record TopicSource(Topic Topic) : WordingSource;
