namespace FindingRules.Testing.Broken;

/// <summary>Values that YAML takes and a pack does not.</summary>
internal static class PackValues
{
    private static readonly (string Path, string Words)[] Values =
    [
        ("pack.yaml", "title: Example pack for tests"), ("pack.yaml", "version: 1.0.0"), ("pack.yaml", "language: 1"),
        ("pack.yaml", "approval: demonstration"), ("pack.yaml", "entries: 15"), ("pack.yaml", "rule: CUFF-090"),
        ("pack.yaml", "on: 2026-01-31"), ("pack.yaml", "vocabulary: vocabulary.yaml"),
        ("vocabulary.yaml", "surface: [bursal, intrasubstance, articular]"), ("vocabulary.yaml", "choose: [fibrillar, hypoechoic, anechoic, heterogeneous]"),
        ("vocabulary.yaml", "plausible: 0.5 mm to 30 mm"), ("vocabulary.yaml", "precision: 0.5 mm"), ("vocabulary.yaml", "sign: true"),
        ("vocabulary.yaml", "extent: surface"), ("vocabulary.yaml", "like: tendon"), ("vocabulary.yaml", "paired: true"),
        ("vocabulary.yaml", "whole: true"), ("vocabulary.yaml", "kind: cuff-tendon"), ("vocabulary.yaml", "title: supraspinatus tendon"),
        ("topics.yaml", "for: each cuff-tendon"), ("topics.yaml", "answers: every"), ("topics.yaml", "certainty: definite"),
        ("topics.yaml", "per: structure"), ("next-steps.yaml", "urgency: soon"), ("next-steps.yaml", "completed-by: [fluid, echo]"),
        ("next-steps.yaml", "done: modality ultrasound"), ("measures.yaml", "is: defect-depth / thickness"), ("measures.yaml", "unit: \"%\""),
        ("scales.yaml", "of: tear-length"), ("scales.yaml", "when: tear-depth full-thickness"), ("scales.yaml", "source: [cofield-size]"),
        ("scales.yaml", "small: below 1 cm"), ("rules.yaml", "id: CUFF-010"), ("rules.yaml", "for: each cuff-tendon"),
        ("rules.yaml", "rule: fluid reaches bursal → bursal-sided"), ("rules.yaml", "over: [CUFF-020, CUFF-021]"),
        ("rules.yaml", "reviewed: 2026-09-01"), ("references.yaml", "status: secondary"), ("references.yaml", "facts: [F-RCT-01]"),
        ("protocols.yaml", "biceps: [position]"), ("cases.yaml", "structure: supraspinatus"), ("cases.yaml", "side: right"),
        ("cases.yaml", "tear-length: 14 mm"), ("cases.yaml", "reangled: persists"), ("cases.yaml", "fluid: { from: bursal, to: articular }"),
    ];

    public static IEnumerable<BrokenPack> OfAnotherSort() =>
        from value in Values
        let key = value.Words.Split(':')[0]
        // A title may be any words at all.
        from instead in new[] { "[[qqq]]", "{ qqq: 1 }", "", "~", "-1e999" }
        where key != "title" || instead is not ("~" or "-1e999")
        select new Replacement(value.Path, value.Words, $"{key}: {instead}").Apply();

    private static readonly Replacement[] Mistakes =
    [
        new("vocabulary.yaml", "0.5 mm to 30 mm", "30 mm to 0.5 mm"), new("vocabulary.yaml", "0.5 mm to 30 mm", "0.5 mm to 30"),
        new("vocabulary.yaml", "0.5 mm to 30 mm", "0.5 to 30"), new("vocabulary.yaml", "0.5 mm to 30 mm", "0.5 s to 30 s"),
        new("vocabulary.yaml", "0.5 mm to 30 mm", "mm"), new("vocabulary.yaml", "0.5 mm to 30 mm", "0.5 mm to 30 deg"),
        new("vocabulary.yaml", "precision: 0.5 mm", "precision: -0.5 mm"), new("vocabulary.yaml", "precision: 0.5 mm", "precision: 0.5 deg"),
        new("vocabulary.yaml", "precision: 0.5 mm", "precision: 0.12345678901234567890123456789012345 mm"),
        new("vocabulary.yaml", "measure: mm", "measure: furlong"), new("vocabulary.yaml", "normal: fibrillar", "normal: fibrilar"),
        new("vocabulary.yaml", "normal: none", "normal: bursal"), new("vocabulary.yaml", "normal: absent", "normal: never"),
        new("vocabulary.yaml", "normal: 2 mm to 8 mm", "normal: 2 mm to 80 mm"), new("vocabulary.yaml", "sign: true", "sign: false"),
        new("vocabulary.yaml", "like: tendon", "like: cuff-tendon"), new("vocabulary.yaml", "      fluid: {", "      echo: {"),
        new("vocabulary.yaml", "[fibrillar, hypoechoic,", "[fibrillar, fibrillar, hypoechoic,"), new("vocabulary.yaml", "[wood, glass,", "[not, glass,"),
        new("vocabulary.yaml", "choose: [negative, positive]", "choose: []"), new("vocabulary.yaml", "thickness: {", "Thickness: {"),
        new("vocabulary.yaml", "sign: true, normal", "sign: true, measure: mm, normal"), new("vocabulary.yaml", "supraspinatus: {", "supra_spinatus: {"),
        new("scales.yaml", "below 1 cm", "below 2 cm"), new("scales.yaml", "below 1 cm", "below 9 mm"), new("scales.yaml", "below 1 cm", "at most 1 cm"),
        new("scales.yaml", "above 5 cm", "above 6 cm"), new("scales.yaml", "above 5 cm", "above 5 s"), new("scales.yaml", "- small: below 1 cm", "- small: from 0 cm to below 1 cm"),
        new("scales.yaml", "from 3 cm to 5 cm", "from 5 cm to 3 cm"), new("scales.yaml", "- medium", "- small"), new("scales.yaml", "above 5 cm", "over 5 cm"),
        new("rules.yaml", "id: CUFF-020", "id: CUFF-010"), new("rules.yaml", "over: [CUFF-020, CUFF-021]", "over: [CUFF-010]"),
        new("rules.yaml", "over: [CUFF-020, CUFF-021]", "over: [CUFF-099]"), new("rules.yaml", "over: [CUFF-020, CUFF-021]", "over: [TEN-010]"),
        new("rules.yaml", "id: CUFF-010", "id: cuff-010"), new("rules.yaml", "reviewed: 2026-09-01", "reviewed: 2026-02-30"),
        new("rules.yaml", "above 50 %", "above 50"), new("rules.yaml", "above 50 %", "above 50 mm"), new("rules.yaml", "at least 4 mm", "at least 4"),
        new("rules.yaml", "at least 4 mm", "at least 12345678901234567890123456789012345 mm"), new("rules.yaml", "is subluxed or dislocated", "is not subluxed or dislocated"),
        new("rules.yaml", "→ bursal-sided", ""), new("rules.yaml", "→ bursal-sided", "→"), new("rules.yaml", "→ bursal-sided", "→ →"),
        new("rules.yaml", "→ bursal-sided", "→ bursal-sided; articular-sided"), new("rules.yaml", "→ bursal-sided", "→ thickened"),
        new("rules.yaml", "(echo hypoechoic or anechoic) and", "echo hypoechoic or shadowing and"), new("rules.yaml", "(echo hypoechoic", "echo hypoechoic"),
        new("rules.yaml", "at least 2 cuff-tendon", "at least 0 cuff-tendon"), new("rules.yaml", "at least 2 cuff-tendon where", "at least 2 cuff-tendon"),
        new("rules.yaml", "contralateral thickness", "other thickness"), new("rules.yaml", "ipsilateral subscapularis", "subscapularis"),
        new("rules.yaml", "fluid reaches bursal →", "fluid spans articular to bursal and not tear-depth bursal-sided →"),
        new("topics.yaml", "{subject}", "{patient}"), new("topics.yaml", "{, tear-length}", "{, tear-length"), new("topics.yaml", "value: \"202843000\"", "value: \"\""),
        new("next-steps.yaml", "urgency: soon", "urgency: tomorrow"), new("references.yaml", "status: secondary", "status: hearsay"),
        new("cases.yaml", "tear-length: 14 mm", "tear-length: 14"), new("cases.yaml", "tear-length: 14 mm", "tear-length: 140 mm"),
        new("cases.yaml", "tear-length: 14 mm", "tear-length: 14 kg"), new("cases.yaml", "from: bursal, to: articular", "from: articular, to: bursal"),
        new("cases.yaml", "side: right", "side: both"), new("cases.yaml", "id: CASE-CUFF-030", "id: CASE-CUFF-010"),
        new("cases.yaml", "tear-depth full-thickness", "tear-depth half-thickness"), new("cases.yaml", "structure: biceps, side: right", "structure: biceps, side: midline"),
        new("pack.yaml", "language: 1", "language: 99"), new("pack.yaml", "on: 2026-01-31", "on: 31.01.2026"), new("pack.yaml", "pack: example", "pack: Example Pack"),
        new("protocols.yaml", "biceps: [position]", "biceps: [fluid]"), new("protocols.yaml", "- subscapularis: [fluid, echo]", "- biceps: [position]"),
    ];

    public static IEnumerable<BrokenPack> OutOfOrder() => Mistakes.Select(m => m.Apply());
}
