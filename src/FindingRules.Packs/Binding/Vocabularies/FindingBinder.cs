using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Binding.Names;
using FindingRules.Packs.Documents;
using FindingRules.Packs.Studies;

namespace FindingRules.Packs.Binding.Vocabularies;

/// <summary>One finding of a kind or of the study: a choice, a sign, a measure or an extent.</summary>
internal static class FindingBinder
{
    private static readonly string[] Types = ["choose", "sign", "measure", "extent"];

    public static Finding? Bind(ScalarNode name, DocumentNode body, BindingContext context)
    {
        var isName = NameCheck.IsName(name, context.Messages);
        var owner = $"the finding `{Shown.Briefly(name.Value)}`";
        string[] found = body is MappingNode mapping ? [.. Types.Where(t => mapping.Find(t) is not null)] : [];
        string[] own = found is ["measure"] ? ["plausible"] : [];
        string[] more = found is ["measure"] ? ["precision", "whole"] : [];
        var fields = Fields.Of(body, owner, name.Inside, context.Messages, own, ["title", "about", "normal", .. Types, .. more]);
        if (fields is null) return Broken(name, context);
        var isMisspelt = found.Length == 0 && body is MappingNode keys
            && keys.Entries.Any(e => Spelling.Closest(e.Key.Value, Types) is not null);
        if (isMisspelt) fields.Spoil();
        else if (found.Length != 1) fields.Report(PackMessages.NoOneType(name.Inside, Shown.Briefly(name.Value), found, Types));
        FindingType? type = found switch
        {
            ["choose"] => BindChoice(name, fields, context),
            ["sign"] => BindSign(fields),
            ["measure"] => MeasureBinder.Bind(name, fields, context),
            ["extent"] => BindExtent(fields, context),
            _ => null,
        };
        var (title, about) = (fields.Words("title"), fields.Words("about"));
        if (!isName || type is null || !fields.IsSound) return Broken(name, context);
        var isAbsent = type is MeasureType or ChoiceType { Normal: null } && IsNone(fields);
        return title is null
            ? new Finding(name.Value, type, name.Location) { About = about, IsAbsentWhenNormal = isAbsent }
            : new Finding(name.Value, type, name.Location) { Title = title, About = about, IsAbsentWhenNormal = isAbsent };
    }

    /// <summary>What only a change has: a normal structure has none of it.</summary>
    public static bool IsNone(Fields fields) => fields.Text("normal") is { Value: ExtentReader.None };

    private static Finding? Broken(ScalarNode name, BindingContext context)
    {
        context.Known.AddBroken(name.Value);
        return null;
    }

    private static ChoiceType? BindChoice(ScalarNode name, Fields fields, BindingContext context)
    {
        var values = BindWords(fields, "choose", NotAssessableValue.Word, context);
        var isAbsent = IsNone(fields) && !values.Contains(ExtentReader.None);
        if (fields.IsSound && !isAbsent && fields.Text("normal") is { } normal && !values.Contains(normal.Value))
            fields.Report(PackMessages.NormalIsNoValue(normal.Inside, name.Value, Shown.Briefly(normal.Value), values));
        if (fields.IsSound) return new ChoiceType([.. values], isAbsent ? null : fields.Text("normal")?.Value);
        foreach (var value in (fields.Node("choose") as ListNode)?.Items.OfType<ScalarNode>() ?? [])
            context.Known.AddBroken(value.Value);
        return null;
    }

    /// <summary>Two or more names in a list, none of which means something else in a study.</summary>
    public static List<string> BindWords(Fields fields, string key, string taken, BindingContext context)
    {
        var words = new List<string>();
        foreach (var text in fields.Texts(key, least: 2))
            if (!NameCheck.IsName(text, context.Messages)) fields.Spoil();
            else if (text.Value == taken) fields.Report(PackMessages.ReservedWord(text.Inside, taken));
            else words.Add(text.Value);
        return words;
    }

    private static SignType? BindSign(Fields fields)
    {
        if (fields.Text("sign") is { Value: not "true" } sign)
            fields.Report(PackMessages.WrongForm(sign.Location, $"`sign` of {fields.Owner}",
                $"`{Shown.Briefly(sign.Value)}`", "`true`"));
        return new SignType(fields.OneOf("normal", ("present", true), ("absent", false)));
    }

    private static ExtentType? BindExtent(Fields fields, BindingContext context)
    {
        var isNone = fields.OneOf("normal", (ExtentReader.None, true)) ?? false;
        if (fields.Text("extent") is not { } name) return null;
        if (context.Symbols.Vocabulary.Axes.TryGetValue(name.Value, out var axis)) return new ExtentType(axis, isNone);
        if (!context.Known.Excuses(name.Value, FileKind.Vocabulary))
            context.Messages.Add(LinkMessages.UnknownAxis(name.Inside, Shown.Briefly(name.Value),
                [.. context.Symbols.Vocabulary.Axes.Keys]));
        fields.Spoil();
        return null;
    }
}
