using FindingRules.Model.Messages;
using FindingRules.Packs.Binding.Files;

namespace FindingRules.Packs.Binding.Names;

/// <summary>
/// Names that the pack declares although a mistake keeps them from being bound. What uses one of them is not reported
/// as well: the mistake is said once, where it is.
/// </summary>
internal sealed class KnownNames
{
    private readonly HashSet<string> _broken = new(StringComparer.Ordinal);
    private readonly HashSet<string> _incomplete = new(StringComparer.Ordinal);

    public bool HasBroken => _broken.Count > 0;

    /// <summary>A name that cannot be one is known under what was probably meant as well.</summary>
    public void AddBroken(string name)
    {
        _broken.Add(name);
        _broken.Add(name.ToLowerInvariant().Replace('_', '-').Replace(' ', '-'));
    }

    /// <summary>A file of this kind could not be read to its end: names may be missing that it declares.</summary>
    public void AddIncomplete(string fileKind) => _incomplete.Add(fileKind);

    /// <summary>Whether a name that is not there may be one that a mistake keeps away.</summary>
    public bool Excuses(string name, string fileKind) => _incomplete.Contains(fileKind) || _broken.Contains(name);

    /// <summary>Whether a message of the rule language about a name, a type or a unit follows from another mistake.</summary>
    public bool Excuses(Message message)
    {
        if (message.Number / 1000 != 3) return false;
        return _incomplete.Any(FileKind.NamesRulesUse.Contains) || (_broken.Count > 0 && MentionsBroken(message.Location.Words));
    }

    /// <summary>The same for what is said of the study of a case.</summary>
    public bool ExcusesStudy(Message message) =>
        message.Number / 1000 == 5
        && (_incomplete.Contains(FileKind.Vocabulary) || _incomplete.Contains(FileKind.Protocols)
            || (_broken.Count > 0 && MentionsBroken(message.Location.Words)));

    private bool MentionsBroken(string text)
    {
        var start = -1;
        for (var i = 0; i <= text.Length; i++)
        {
            var isInWord = i < text.Length && (char.IsAsciiLetterOrDigit(text[i]) || text[i] == '-');
            if (isInWord && start < 0) start = i;
            if (isInWord || start < 0) continue;
            if (_broken.Contains(text[start..i])) return true;
            start = -1;
        }
        return false;
    }
}
