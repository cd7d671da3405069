using System.CommandLine;
using System.CommandLine.Parsing;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Cli.Usage;

/// <summary>
/// What is wrong with the words of a command line, in our wording and with the place. An option that is not known would
/// otherwise be taken for the name of a file.
/// </summary>
internal sealed class UsageMistakes
{
    private readonly ParseResult _result;
    private readonly WrittenCommand _written;
    private readonly Command _command;

    private UsageMistakes(ParseResult result, IReadOnlyList<string> arguments)
    {
        _result = result;
        _written = new WrittenCommand(arguments);
        _command = result.CommandResult.Command;
    }

    /// <summary>It only leads to others.</summary>
    private bool IsRoot => _command.Subcommands.Count > 0;

    /// <summary>As it is written after the program's name, such as <c>ledger verify</c>.</summary>
    private string Name => string.Join(' ', _command.Parents.OfType<Command>().Where(p => p.Parents.Any())
        .Select(p => p.Name).Append(_command.Name));

    public static IReadOnlyList<Message> Of(ParseResult result, IReadOnlyList<string> arguments) =>
        new UsageMistakes(result, arguments).Find();

    private List<Message> Find()
    {
        if (_result.Errors.Count == 0 && IsRoot) return [];
        if (IsRoot) return [OfRoot()];
        var unknown = UnknownOptions().ToList();
        if (unknown.Count > 0) return unknown;
        return _result.Errors.Count > 0 ? [.. OfErrors()] : [.. UnknownValues()];
    }

    private Message OfRoot()
    {
        string[] commands = [.. _command.Subcommands.Select(c => c.Name)];
        if (_result.UnmatchedTokens.Count == 0) return CommandToolMessages.NoCommand(_written.End, commands);
        var found = _result.UnmatchedTokens[0];
        return found.StartsWith('-')
            ? CommandToolMessages.UnknownOption(_written.Find(found), found, Name, Names())
            : CommandToolMessages.UnknownCommand(_written.Find(found), found, commands);
    }

    private IEnumerable<Message> UnknownOptions()
    {
        var known = _command.Options.SelectMany(o => o.Aliases.Append(o.Name)).ToHashSet(StringComparer.Ordinal);
        foreach (var (word, at) in _written.Words.TakeWhile(w => w.Word != "--"))
            if (word.Length > 1 && word[0] == '-' && !known.Contains(word.Split('=', ':')[0]))
                yield return CommandToolMessages.UnknownOption(at, word.Split('=', ':')[0], Name, Names());
    }

    private IEnumerable<Message> OfErrors()
    {
        foreach (var error in _result.Errors)
            yield return error.SymbolResult switch
            {
                ArgumentResult { Tokens.Count: 0, Argument: { } argument } =>
                    CommandToolMessages.MissingArgument(_written.End, Name, argument.Name, argument.Description ?? ""),
                OptionResult { Tokens.Count: 0, Option: { } option } =>
                    CommandToolMessages.MissingValue(_written.Find(option.Name), option.Name, option.HelpName ?? ""),
                OptionResult { Tokens: { } tokens, Option: { } option } =>
                    CommandToolMessages.GivenTwice(_written.Find(tokens[^1].Value), option.Name),
                _ when _result.UnmatchedTokens.Count > 0 =>
                    CommandToolMessages.OneTooMany(_written.Find(_result.UnmatchedTokens[0]), _result.UnmatchedTokens[0], Name),
                _ => CommandToolMessages.OneTooMany(_written.End, error.Message, Name),
            };
    }

    private IEnumerable<Message> UnknownValues()
    {
        foreach (var option in _command.Options.OfType<WordOption>())
            if (_result.GetValue(option) is { } found && !option.Words.Contains(found))
                yield return CommandToolMessages.UnknownValue(_written.Find(found), option.Name, found, option.Words);
        foreach (var option in _command.Options.OfType<CountOption>())
            if (_result.GetValue(option) is { } found && !option.Takes(found))
                yield return CommandToolMessages.WrongNumber(_written.Find(found), option.Name, found, option.HelpName!);
    }

    private string[] Names() => [.. _command.Options.Select(o => o.Name)];
}
