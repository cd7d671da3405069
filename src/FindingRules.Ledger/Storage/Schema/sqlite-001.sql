-- The records: never changed, never removed.
CREATE TABLE record (
  position INTEGER PRIMARY KEY,
  id BLOB NOT NULL UNIQUE,
  kind INTEGER NOT NULL,
  time INTEGER NOT NULL,
  leaf BLOB NOT NULL,
  header BLOB NOT NULL
);
CREATE TRIGGER record_stays BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'a record is never removed'); END;
CREATE TRIGGER record_unchanged BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;

-- What can be erased of them: there or not there, never changed.
CREATE TABLE body (
  position INTEGER PRIMARY KEY,
  salt BLOB NOT NULL,
  content BLOB NOT NULL,
  answer BLOB NOT NULL,
  terms BLOB NOT NULL
);
CREATE TRIGGER body_unchanged BEFORE UPDATE ON body BEGIN SELECT RAISE(ABORT, 'a body is never changed'); END;

-- The tree over the records: what is needed to append to it, and every eighth level of its inner hashes.
CREATE TABLE tree (one INTEGER PRIMARY KEY CHECK (one = 1), size INTEGER NOT NULL, frontier BLOB NOT NULL);
INSERT INTO tree VALUES (1, 0, x'');
CREATE TABLE inner_hash (level INTEGER NOT NULL, place INTEGER NOT NULL, hash BLOB NOT NULL, PRIMARY KEY (level, place)) WITHOUT ROWID;

CREATE TABLE retry (key BLOB PRIMARY KEY, request BLOB NOT NULL, position INTEGER NOT NULL) WITHOUT ROWID;
CREATE INDEX retry_of_record ON retry (position);

CREATE TABLE about (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;

CREATE TABLE pack (
  text_digest TEXT PRIMARY KEY,
  meaning_digest TEXT NOT NULL,
  name TEXT NOT NULL,
  version TEXT NOT NULL,
  stored INTEGER NOT NULL
) WITHOUT ROWID;
CREATE TABLE pack_file (text_digest TEXT NOT NULL, path TEXT NOT NULL, bytes BLOB NOT NULL, PRIMARY KEY (text_digest, path));

-- The index, made from the records after they are durable, up to its watermark.
CREATE TABLE watermark (one INTEGER PRIMARY KEY CHECK (one = 1), indexed INTEGER NOT NULL);
INSERT INTO watermark VALUES (1, 0);
CREATE TABLE occurrence (word INTEGER NOT NULL, position INTEGER NOT NULL, PRIMARY KEY (word, position)) WITHOUT ROWID;
CREATE TABLE hour (hour INTEGER PRIMARY KEY, first INTEGER NOT NULL, last INTEGER NOT NULL);
CREATE TABLE tally (
  rule TEXT NOT NULL,
  pack TEXT NOT NULL,
  version TEXT NOT NULL,
  month TEXT NOT NULL,
  what INTEGER NOT NULL,
  detail TEXT NOT NULL,
  count INTEGER NOT NULL,
  PRIMARY KEY (rule, pack, version, month, what, detail)
) WITHOUT ROWID;
CREATE TABLE verdict (
  reading INTEGER NOT NULL,
  suggestion TEXT NOT NULL,
  rules TEXT NOT NULL,
  reason TEXT,
  PRIMARY KEY (reading, suggestion)
) WITHOUT ROWID;
