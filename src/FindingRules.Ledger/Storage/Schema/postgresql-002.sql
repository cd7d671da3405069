-- The places of a word, 1024 to a row: where few have it a list of 16-bit numbers, most significant byte first; where many have it a bit for
-- each and one byte more, so that an odd length tells it from a list. Counts stay as they are, for they count what was erased too.
CREATE TABLE posting (word BIGINT NOT NULL, chunk BIGINT NOT NULL, positions BYTEA NOT NULL, PRIMARY KEY (word, chunk)) WITH (fillfactor = 80);
INSERT INTO posting
SELECT word, position >> 10, string_agg(int2send((position & 1023)::smallint), ''::bytea ORDER BY position)
FROM occurrence
GROUP BY word, position >> 10;
DROP TABLE occurrence;
