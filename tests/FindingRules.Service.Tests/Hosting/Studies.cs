namespace FindingRules.Service.Tests.Hosting;

/// <summary>Invented studies for the example pack.</summary>
internal static class Studies
{
    public const string FullThickness = """
        { "study": "S-7F3K", "subjects": [
          { "structure": "supraspinatus", "side": "right", "findings": {
            "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists", "tear-length": "14 mm" } },
          { "structure": "biceps", "side": "right", "findings": { "position": "subluxed" } } ] }
        """;

    public const string Misspelt = """
        { "study": "S-7F3K", "subjects": [
          { "structure": "supraspinatos", "side": "right", "findings": { "reangled": "persists" } } ] }
        """;

    public const string TooLong = """
        { "study": "S-7F3K", "subjects": [
          { "structure": "supraspinatus", "side": "right", "findings": { "tear-length": "140 mm" } } ] }
        """;
}
