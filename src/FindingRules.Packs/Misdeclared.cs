using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;

namespace FindingRules.Packs;

/// <summary>
/// A name that is misspelt where it is declared makes every use of it unknown. Then one message stands at the declaration,
/// in place of one for each use that would recommend the slip.
/// </summary>
internal static partial class Misdeclared
{
    public static ImmutableArray<Message> Fold(ImmutableArray<Message> messages, ImmutableArray<PackFile> files)
    {
        var suspects = messages.Where(IsOfAName)
            .Select(m => (Used: m.Fix!.Location.Words, Declared: m.Fix!.Replacement))
            .Where(n => Name().IsMatch(n.Used) && Name().IsMatch(n.Declared))
            .GroupBy(n => n).Where(g => g.Count() > 1).Select(g => g.Key).ToList();
        if (suspects.Count == 0) return messages;
        SourceText[] texts = [.. files.Select(f => new SourceText(f.Path, Encoding.UTF8.GetString(f.Bytes.Span)))];
        foreach (var (used, declared) in suspects)
            if (Only(texts, declared) is { } at)
                messages = Fold(messages, at, declared, used);
        return messages;
    }

    private static ImmutableArray<Message> Fold(ImmutableArray<Message> messages, Location at, string declared, string used)
    {
        var follow = messages.Where(m => m.Number / 1000 is 3 or 5 && Places(m.Location.Words, used).Any()).ToList();
        return
        [
            .. messages.Except(follow), LinkMessages.DeclaredOtherwise(at, declared, used, [.. follow.Select(m => m.Location)]),
        ];
    }

    private static bool IsOfAName(Message message) =>
        message.Number / 1000 is 3 or 5 && message is { Severity: Severity.Error, Fix: not null };

    /// <summary>The one place of all files where a name stands; null where it stands twice, and so is used.</summary>
    private static Location? Only(IEnumerable<SourceText> texts, string name)
    {
        Location? only = null;
        foreach (var text in texts)
            foreach (var place in Places(text.Content, name))
            {
                if (only is not null) return null;
                only = new Location(text, new TextSpan(place, name.Length));
            }
        return only;
    }

    private static IEnumerable<int> Places(string text, string name)
    {
        for (var i = text.IndexOf(name, StringComparison.Ordinal); i >= 0; i = text.IndexOf(name, i + 1, StringComparison.Ordinal))
            if ((i == 0 || !IsOfName(text[i - 1])) && (i + name.Length == text.Length || !IsOfName(text[i + name.Length])))
                yield return i;
    }

    private static bool IsOfName(char c) => char.IsAsciiLetterOrDigit(c) || c == '-';

    [GeneratedRegex("^[a-z][a-z0-9]*(-[a-z0-9]+)*$")]
    private static partial Regex Name();
}
