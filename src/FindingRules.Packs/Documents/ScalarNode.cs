using System.Globalization;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>A single value: a text, a number, true or false.</summary>
internal sealed class ScalarNode(SourceText source, TextSpan span, string value, ScalarStyle style) : DocumentNode(source, span)
{
    private MappedText? _text;

    public string Value { get; } = value;

    public ScalarStyle Style { get; } = style;

    /// <summary>The value, each character with its place in the file.</summary>
    public MappedText Text => _text ??= ScalarMap.Read(this);

    /// <summary>The value's own place, without quotes.</summary>
    public Location Inside => Style is ScalarStyle.SingleQuoted or ScalarStyle.DoubleQuoted or ScalarStyle.JsonText && Span.Length >= 2
        ? At(new TextSpan(Span.Start + 1, Span.Length - 2))
        : Location;

    public bool IsNothing =>
        Style == ScalarStyle.JsonNull || (Style == ScalarStyle.Plain && Value is "" or "~" or "null" or "Null" or "NULL");

    /// <summary>Written so that it can be a text: in JSON between quotes, in YAML in any way.</summary>
    public bool IsText => Style < ScalarStyle.JsonNumber;

    /// <summary>Written so that it can be a number.</summary>
    public bool IsNumber => Style == ScalarStyle.JsonNumber
        || (Style == ScalarStyle.Plain && Value.Length > 0 && (char.IsAsciiDigit(Value[0]) || Value[0] == '-'));

    /// <summary>Written so that other readers of YAML take it for a number or for true or false, and not for a text.</summary>
    public bool LooksOtherThanText => Style == ScalarStyle.Plain
        && (Value is "true" or "false" || (Value.Length > 0 && Value[0] is '-' or '+' or '.' or (>= '0' and <= '9')
            && double.TryParse(Value, NumberStyles.Float, CultureInfo.InvariantCulture, out _)));

    /// <summary>True or false where it is one of the two words.</summary>
    public bool? AsTrueOrFalse => Style is ScalarStyle.Plain or ScalarStyle.JsonTrueOrFalse
        ? Value switch { "true" => true, "false" => false, _ => null }
        : null;

    public override string Form => Style switch
    {
        ScalarStyle.JsonNumber => "a number",
        ScalarStyle.JsonTrueOrFalse => $"`{Value}`",
        ScalarStyle.JsonNull => "an empty value",
        _ => IsNothing ? "an empty value" : "a text",
    };
}

internal enum ScalarStyle
{
    Plain,
    SingleQuoted,
    DoubleQuoted,
    Literal,
    Folded,
    JsonText,
    JsonNumber,
    JsonTrueOrFalse,
    JsonNull,
}
