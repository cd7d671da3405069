namespace FindingRules.Service.OpenApi;

/// <summary>What the parameters of questions to the ledger mean.</summary>
internal static class RecordWords
{
    /// <summary>Null for a parameter of another operation.</summary>
    public static string? Meaning(string? operation, string? parameter) => (operation, parameter) switch
    {
        ("SearchReadings", _) => OfSearch(parameter),
        ("GetRecord" or "GetRecordTrace" or "GetRecordProof" or "CreateFeedback" or "ListFeedback", "id") =>
            "Id of the record, from the `Location` of the answer or the line of a batch.",
        ("GetRecordTrace", "again") => "`true` evaluates the study anew and compares.",
        ("GetRecordProof" or "GetTreeHead", "size") => "The number of records of an earlier tree; the present one where it is left out.",
        ("GetConsistency", "from") => "The number of records of the earlier tree, from its head.",
        ("GetConsistency", "to") => "The number of records of the later tree; the present one where it is left out.",
        ("ExportRecords", "from") => "The index of the first record; 0 where it is left out.",
        _ => null,
    };

    private static string OfSearch(string? parameter) => parameter switch
    {
        "rule" => "Id of a rule; what became of it is `outcome`.",
        "revision" => "The revision of `rule`.",
        "outcome" => "`fired` (the condition was true; where it is left out), `shown`, `unknown` or `borderline`.",
        "missing" => "A finding for want of which `rule`, or any rule, was unknown.",
        "pack" => "Name of a pack, or a digest of its texts or of its meaning.",
        "version" => "The version of `pack`.",
        "topic" => "A topic that was decided, such as `depth`.",
        "value" => "The value of `topic`.",
        "subject" => "A structure that the study speaks of, such as `right supraspinatus`.",
        "study" => "The key of a study.",
        "accepted" => "`true`: a suggestion, of `rule` where it is said, was accepted; `false`: one was overridden.",
        "reason" => "The reason for which a suggestion was overridden.",
        "from" => "The first day or moment, in UTC.",
        "to" => "The day or moment after the last.",
        "cursor" => "The `next` of the page before.",
        "limit" => "The most records to a page, up to 1000; 50 where it is left out.",
        _ => throw new InvalidOperationException($"the parameter {parameter} has no description"),
    };
}
