using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using FindingRules.Explaining;
using FindingRules.Ledger.Proofs;
using FindingRules.Ledger.Records;

namespace FindingRules.Service.Records;

/// <summary>A record of the ledger.</summary>
/// <param name="Index">Its place among the leaves of the tree.</param>
/// <param name="Kind">reading, shadow, feedback, erasure or withdrawal.</param>
/// <param name="About">The record that it speaks of.</param>
/// <param name="IsErased">Its body is gone; that it was there can still be proven.</param>
/// <param name="SupersededBy">Readings of studies that say that they replace this one, the earliest first.</param>
/// <param name="Study">Of a reading the study, in canonical JSON.</param>
/// <param name="Reading">Of a reading what was answered.</param>
/// <param name="Content">Of any other record what it says.</param>
internal sealed record RecordResponse(
    Guid Id, long Index, DateTimeOffset Time, string Kind, RecordPackResponse? Pack, string? Engine, string Actor,
    string? TraceParent, string? TraceState, Guid? About, bool IsErased, IReadOnlyList<Guid>? SupersededBy,
    JsonElement? Study, JsonElement? Reading, JsonElement? Content)
{
    public static RecordResponse Of(LedgerRecord record, bool hasBody = true, ImmutableArray<Guid>? supersededBy = null)
    {
        var isReading = record.Kind is RecordKind.Reading or RecordKind.Shadow;
        var body = hasBody ? record.Body : null;
        return new RecordResponse(
            record.Id, record.Index, record.Time, KindOf(record), PackOf(record.Pack), record.Engine, record.Actor,
            record.Correlation?.TraceParent, record.Correlation is { State.IsEmpty: false } state ? state.TraceStateHeader : null,
            record.About, record.IsErased, supersededBy,
            isReading ? Parse(body?.Content) : null, isReading ? Parse(body?.Answer) : null, isReading ? null : Parse(body?.Content));
    }

    public static string KindOf(LedgerRecord record) => record.Kind.ToString().ToLowerInvariant();

    public static RecordPackResponse? PackOf(PackReference? pack) =>
        pack is null ? null : new(pack.Name, pack.Version, pack.MeaningDigest, pack.TextDigest);

    public static JsonElement? Parse(ReadOnlyMemory<byte>? json) => json is { IsEmpty: false } bytes ? JsonElement.Parse(bytes.Span) : null;
}

internal sealed record RecordPackResponse(string Name, string Version, string MeaningDigest, string TextDigest);

/// <param name="Study">The key of the study; absent where it was erased.</param>
internal sealed record FoundRecordResponse(
    Guid Id, long Index, DateTimeOffset Time, RecordPackResponse? Pack, string? Study, string? Supersedes, bool IsErased, string Url)
{
    public static FoundRecordResponse Of(LedgerRecord record) => new(
        record.Id, record.Index, record.Time, RecordResponse.PackOf(record.Pack), record.Body?.Terms.Study, record.Body?.Terms.Supersedes,
        record.IsErased, $"/v1/readings/{record.Id}");
}

/// <param name="Next">The cursor of the next page; absent at the end. A page may be short although there is more.</param>
internal sealed record SearchResponse(IReadOnlyList<FoundRecordResponse> Records, string? Next);

/// <param name="Again">There where it was asked for.</param>
/// <param name="Trace">Why the reading says each of its lines, from the pack as it was then.</param>
internal sealed record RecordTraceResponse(Guid Record, AgainResponse? Again, JsonElement? Trace)
{
    public static RecordTraceResponse Of(Guid record, Repetition repetition) => new(
        record, repetition.Again is { } again ? AgainResponse.Of(again) : null,
        RecordResponse.Parse(ExplanationJson.ToBytes(repetition.Explanation!)));
}

/// <param name="IsEqual">Evaluated anew, the reading is the recorded one, byte for byte.</param>
/// <param name="EngineThen">The version that made the record.</param>
/// <param name="Reading">Where it differs: what it says now.</param>
internal sealed record AgainResponse(bool IsEqual, string EngineThen, string EngineNow, JsonElement? Reading)
{
    public static AgainResponse Of(SecondReading again) => new(
        again.IsEqual, again.EngineThen, again.EngineNow, again.IsEqual ? null : RecordResponse.Parse(again.Reading));
}

/// <param name="Header">The exact text of the leaf; it carries the commitment to the body.</param>
/// <param name="Path">Hashes from the leaf up, as in RFC 9162.</param>
/// <param name="Body">What the commitment was made of; absent where it was erased.</param>
internal sealed record InclusionResponse(
    Guid Record, long Index, string Header, CommittedResponse? Body, IReadOnlyList<string> Path, JsonElement? Head)
{
    public static InclusionResponse Of(InclusionProof proof) => new(
        proof.Record, proof.Index, Encoding.UTF8.GetString(proof.Header.Span), proof.Body is { } body ? CommittedResponse.Of(body) : null,
        [.. proof.Path.Select(h => Convert.ToHexStringLower(h.Span))], RecordResponse.Parse(proof.Head.ToJson()));
}

/// <summary>
/// The exact texts of a body: SHA-256 of the salt, then of content, answer and terms, each with its length in bytes before it (eight bytes,
/// most significant first), is the `commitment` of the header.
/// </summary>
/// <param name="Salt">Random bytes, in hexadecimal digits.</param>
/// <param name="Content">Of a reading the study, in canonical JSON.</param>
/// <param name="Answer">Of a reading what was answered; otherwise empty.</param>
/// <param name="Terms">What it is found by.</param>
internal sealed record CommittedResponse(string Salt, string Content, string Answer, string Terms)
{
    public static CommittedResponse Of(RecordBody body) => new(
        Convert.ToHexStringLower(body.Salt.Span), Encoding.UTF8.GetString(body.Content.Span), Encoding.UTF8.GetString(body.Answer.Span),
        Encoding.UTF8.GetString(body.TermsJson.Span));
}

/// <param name="From">The number of records of the earlier tree.</param>
internal sealed record ConsistencyResponse(long From, IReadOnlyList<string> Path, JsonElement? Head)
{
    public static ConsistencyResponse Of(ConsistencyProof proof) => new(
        proof.From, [.. proof.Path.Select(h => Convert.ToHexStringLower(h.Span))], RecordResponse.Parse(proof.Head.ToJson()));
}

/// <summary>What the ledger vouches for: that at this time its first records had this root.</summary>
internal sealed record TreeHeadResponse(string Key, Guid Ledger, string Root, string Signature, long Size, DateTimeOffset Time);
