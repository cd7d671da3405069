-- The places of a word, 1024 to a row: where few have it a list of 16-bit numbers, most significant byte first; where many have it a bit for
-- each and one byte more, so that an odd length tells it from a list. Counts stay as they are, for they count what was erased too.
CREATE TABLE posting (word INTEGER NOT NULL, chunk INTEGER NOT NULL, positions BLOB NOT NULL, PRIMARY KEY (word, chunk)) WITHOUT ROWID;
INSERT INTO posting
SELECT word, position >> 10, unhex(group_concat(printf('%04x', position & 1023), ''))
FROM (SELECT word, position FROM occurrence ORDER BY word, position)
GROUP BY word, position >> 10;
DROP TABLE occurrence;
