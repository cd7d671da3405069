using System.Collections.Frozen;

namespace FindingRules.Packs.Studies;

/// <summary>Members that would say who the patient is. They are refused by name, so that no sender mistakes this for a record.</summary>
internal static class IdentityWords
{
    private static readonly FrozenSet<string> Words = FrozenSet.ToFrozenSet(
        [
            "name", "names", "patient", "patientid", "patientname", "patientkey", "person", "subjectid", "firstname", "lastname",
            "givenname", "familyname", "forename", "surname", "middlename", "maidenname", "initials", "birthdate", "birthday", "birth",
            "dateofbirth", "dob", "birthyear", "birthplace", "address", "street", "city", "postcode", "postalcode", "zip",
            "zipcode", "phone", "telephone", "mobile", "fax", "email", "mail", "telecom", "contact", "identifier", "identifiers",
            "mrn", "medicalrecordnumber", "recordnumber", "hospitalnumber", "casenumber", "accession", "accessionnumber", "ssn",
            "socialsecuritynumber", "nationalid", "nhsnumber", "insurance", "insurancenumber", "passport", "photo", "referrer",
            "referringphysician", "physician", "radiologist", "studydate", "examdate",
        ],
        StringComparer.Ordinal);

    public static bool Includes(string member)
    {
        if (member.Length > 64) return false;
        Span<char> letters = stackalloc char[64];
        var count = 0;
        foreach (var c in member)
            if (char.IsAsciiLetterOrDigit(c))
                letters[count++] = char.ToLowerInvariant(c);
        return Words.GetAlternateLookup<ReadOnlySpan<char>>().Contains(letters[..count]);
    }
}
