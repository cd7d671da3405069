using FindingRules.Model.Messages;
using FindingRules.Model.Text;

namespace FindingRules.Service.Problems;

/// <summary>One message as JSON, in the form that the command line writes too.</summary>
/// <param name="Page">Where the code is explained.</param>
internal sealed record MessageResponse(
    string Code, string Severity, string Text, string? Label, PlaceResponse? Place, IReadOnlyList<RelatedResponse>? Related,
    FixResponse? Fix, string Page)
{
    public static MessageResponse Of(Message message) => new(
        message.Code, message.Severity.ToString().ToLowerInvariant(), message.Text, message.Label,
        PlaceResponse.Of(message.Location),
        message.Related.IsEmpty ? null : [.. message.Related.Select(r => new RelatedResponse(r.Label, PlaceResponse.Of(r.Location)))],
        message.Fix is { } fix ? new FixResponse(fix.Title, fix.Replacement, PlaceResponse.Of(fix.Location)) : null,
        $"/v1/codes/{message.Code}");
}

/// <summary>Lines and columns count from 1, columns in UTF-16 units; the end is the place after the last character.</summary>
/// <param name="Pointer">JSON Pointer into a study.</param>
/// <param name="Words">What stands there, cut short where it is long.</param>
internal sealed record PlaceResponse(
    string File, int? Line, int? Column, int? EndLine, int? EndColumn, string? Pointer, string? Words)
{
    private const int LongestWords = 200;

    public static PlaceResponse Of(Location location)
    {
        // A message about a file or request that was never read as text has a place without a line.
        if (location.Source.Content.Length == 0) return new(location.Source.Path, null, null, null, null, location.Pointer, null);
        var start = location.Start;
        var end = location.Source.PositionOf(location.Span.End);
        var words = location.Words;
        return new(
            location.Source.Path, start.Line, start.Column, end.Line, end.Column, location.Pointer,
            words.Length <= LongestWords ? words : words[..LongestWords] + "…");
    }
}

internal sealed record RelatedResponse(string Label, PlaceResponse Place);

internal sealed record FixResponse(string Title, string Replacement, PlaceResponse Place);
