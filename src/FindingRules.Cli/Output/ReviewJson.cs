using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli.Output;

/// <summary>
/// A review for a program: <c>{folder, pack?, rules?, cases, messages}</c>, where <c>pack</c> and <c>rules</c> are missing
/// for a pack that could not be read.
/// </summary>
internal static class ReviewJson
{
    private static readonly JsonWriterOptions Pretty =
        new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, Indented = true, NewLine = "\n" };

    public static string Of(string folder, PackReview review)
    {
        var bytes = new ArrayBufferWriter<byte>(4096);
        using (var to = new Utf8JsonWriter(bytes, Pretty))
        {
            to.WriteStartObject();
            to.WriteString("folder", folder);
            if (review.Pack is { } pack) WritePack(to, pack, review);
            to.WriteStartArray("cases");
            foreach (var result in review.Cases)
            {
                to.WriteStartObject();
                to.WriteString("id", result.Case.Id);
                to.WriteBoolean("passed", result.Passed);
                to.WriteEndObject();
            }
            to.WriteEndArray();
            to.WritePropertyName("messages");
            MessageJson.Write(to, review.Messages);
            to.WriteEndObject();
        }
        return Encoding.UTF8.GetString(bytes.WrittenSpan);
    }

    private static void WritePack(Utf8JsonWriter to, CompiledPack compiled, PackReview review)
    {
        var pack = compiled.Pack;
        to.WriteStartObject("pack");
        to.WriteString("name", pack.Name);
        to.WriteString("version", pack.Version);
        to.WriteString("meaningDigest", pack.MeaningDigest);
        to.WriteString("textDigest", pack.TextDigest);
        to.WriteBoolean("isDemonstration", pack.Approval is null);
        to.WriteEndObject();
        to.WriteStartObject("rules");
        to.WriteNumber("inForce", pack.Rules.Count(pack.IsInForce));
        to.WriteNumber("withdrawn", pack.Rules.Count(r => !pack.IsInForce(r)));
        to.WriteStartArray("withoutCase");
        foreach (var rule in review.Unexercised) to.WriteStringValue(rule);
        to.WriteEndArray();
        to.WriteEndObject();
    }
}
