-- The records: never changed, never removed.
CREATE TABLE record (
  position BIGINT PRIMARY KEY,
  id BYTEA NOT NULL UNIQUE,
  kind SMALLINT NOT NULL,
  time BIGINT NOT NULL,
  leaf BYTEA NOT NULL,
  header BYTEA NOT NULL
);

-- What can be erased of them: there or not there, never changed.
CREATE TABLE body (
  position BIGINT PRIMARY KEY,
  salt BYTEA NOT NULL,
  content BYTEA NOT NULL,
  answer BYTEA NOT NULL,
  terms BYTEA NOT NULL
);

-- The tree over the records: what is needed to append to it, and every eighth level of its inner hashes.
CREATE TABLE tree (one INTEGER PRIMARY KEY CHECK (one = 1), size BIGINT NOT NULL, frontier BYTEA NOT NULL);
INSERT INTO tree VALUES (1, 0, '');
CREATE TABLE inner_hash (level INTEGER NOT NULL, place BIGINT NOT NULL, hash BYTEA NOT NULL, PRIMARY KEY (level, place));

CREATE TABLE retry (key BYTEA PRIMARY KEY, request BYTEA NOT NULL, position BIGINT NOT NULL);
CREATE INDEX retry_of_record ON retry (position);

CREATE TABLE about (name TEXT PRIMARY KEY, value TEXT NOT NULL);

CREATE TABLE pack (
  text_digest TEXT PRIMARY KEY,
  meaning_digest TEXT NOT NULL,
  name TEXT NOT NULL,
  version TEXT NOT NULL,
  stored BIGINT NOT NULL
);
CREATE TABLE pack_file (text_digest TEXT NOT NULL, path TEXT NOT NULL, bytes BYTEA NOT NULL, PRIMARY KEY (text_digest, path));

-- The index, made from the records after they are durable, up to its watermark.
CREATE TABLE watermark (one INTEGER PRIMARY KEY CHECK (one = 1), indexed BIGINT NOT NULL);
INSERT INTO watermark VALUES (1, 0);
CREATE TABLE occurrence (word BIGINT NOT NULL, position BIGINT NOT NULL, PRIMARY KEY (word, position));
CREATE TABLE hour (hour INTEGER PRIMARY KEY, first BIGINT NOT NULL, last BIGINT NOT NULL);
CREATE TABLE tally (
  rule TEXT NOT NULL,
  pack TEXT NOT NULL,
  version TEXT NOT NULL,
  month TEXT NOT NULL,
  what INTEGER NOT NULL,
  detail TEXT NOT NULL,
  count BIGINT NOT NULL,
  PRIMARY KEY (rule, pack, version, month, what, detail)
);
CREATE TABLE verdict (
  reading BIGINT NOT NULL,
  suggestion TEXT NOT NULL,
  rules TEXT NOT NULL,
  reason TEXT,
  PRIMARY KEY (reading, suggestion)
);

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'a % is never changed or removed', TG_TABLE_NAME; END $$;
CREATE TRIGGER record_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON record FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER body_unchanged BEFORE UPDATE OR TRUNCATE ON body FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
