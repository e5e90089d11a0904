-- The shop: what is on the shelf and how it came and went; jobs, with what was answered then. Of all this only stock itself is part of the exchange
-- format, and a row of it becomes the shop's own with its first movement.

-- Stock no longer refers to sender: a part stays on the shelf when the pack that knew it goes.
CREATE TABLE stock_kept (
  sender        TEXT NOT NULL CHECK (sender <> ''),   -- part number as on the bag
  bin           TEXT NOT NULL CHECK (bin <> ''),
  quantity      INTEGER NOT NULL CHECK (quantity >= 0),
  minimum       INTEGER NOT NULL DEFAULT 0 CHECK (minimum >= 0),
  pack          TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (sender, bin)
) STRICT, WITHOUT ROWID;
INSERT INTO stock_kept SELECT sender, CASE bin WHEN '' THEN '?' ELSE bin END, quantity, minimum, pack FROM stock;
DROP TABLE stock;
ALTER TABLE stock_kept RENAME TO stock;
CREATE INDEX stock_with_minimum ON stock (sender) WHERE minimum > 0;

-- Jobs -----------------------------------------------------------------------------------------------------------------

-- A number is never given twice, so that what speaks of an erased job never speaks of another.
CREATE TABLE job_kept (
  id            INTEGER PRIMARY KEY AUTOINCREMENT,
  opened        TEXT NOT NULL,                  -- UTC, ISO 8601
  opened_by     TEXT NOT NULL DEFAULT '',       -- who of the shop
  changed       TEXT NOT NULL,
  state         TEXT NOT NULL DEFAULT 'open' CHECK (state IN ('open', 'done')),
  reference     TEXT NOT NULL,                  -- the customer's own word for it; no more personal data than that
  vehicle       TEXT NOT NULL DEFAULT '',
  engine        TEXT NOT NULL DEFAULT '',
  seen          TEXT NOT NULL DEFAULT '',       -- what was seen
  note          TEXT NOT NULL DEFAULT '',
  part          TEXT NOT NULL DEFAULT '',       -- fitted in the end
  cause         TEXT NOT NULL DEFAULT '',       -- found in the end: code of a fault
  symptom       TEXT NOT NULL DEFAULT '',       -- what was complained of, where a cause was found
  deleted       TEXT                            -- put away, UTC; none: it stands. To be rid of it for good it is erased
) STRICT;
INSERT INTO job_kept (id, opened, changed, reference, note) SELECT id, opened, opened, reference, note FROM job;
DROP TABLE job;
ALTER TABLE job_kept RENAME TO job;
CREATE INDEX job_by_cause ON job (cause, symptom) WHERE cause <> '' AND deleted IS NULL;

CREATE TABLE job_document_kept (
  job           INTEGER NOT NULL REFERENCES job,
  ordinal       INTEGER NOT NULL CHECK (ordinal >= 1),
  kind          TEXT NOT NULL CHECK (kind IN ('match', 'pair', 'trim', 'plan', 'date', 'fault', 'bench run', 'attachment', 'other')),
  made          TEXT NOT NULL,                  -- UTC, ISO 8601
  document      TEXT NOT NULL,                  -- JSON, checked before it comes here: json functions are barred in an untrusted schema
  made_by       TEXT NOT NULL DEFAULT '',
  title         TEXT NOT NULL DEFAULT '',       -- in one line
  part          TEXT NOT NULL DEFAULT '',       -- recommended in it
  question      TEXT NOT NULL DEFAULT '',       -- JSON it can be asked again from; empty: it cannot
  hash          TEXT NOT NULL DEFAULT '',       -- SHA-256 of the document, lower-case hexadecimal
  removed       INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1)),
  log_line      INTEGER NOT NULL DEFAULT 0,     -- last line of the change log when it was kept: what came later may have changed the answer
  PRIMARY KEY (job, ordinal)
) STRICT, WITHOUT ROWID;
INSERT INTO job_document_kept (job, ordinal, kind, made, document)
  SELECT job, ordinal, CASE WHEN kind IN ('match', 'pair', 'trim', 'plan', 'date', 'fault', 'bench run', 'attachment') THEN kind ELSE 'other' END, made, document
  FROM job_document;
DROP TABLE job_document;
ALTER TABLE job_document_kept RENAME TO job_document;

-- What undo goes back to. A step holds the job as it was before it; undone, as it was after. A new step forgets the undone ones. It goes with the job.
CREATE TABLE job_step (
  id            INTEGER PRIMARY KEY,
  job           INTEGER NOT NULL REFERENCES job,
  at            TEXT NOT NULL,
  who           TEXT NOT NULL,
  what          TEXT NOT NULL,                  -- 'note changed', 'closed', …
  undone        INTEGER NOT NULL DEFAULT 0 CHECK (undone IN (0, 1)),
  document      INTEGER,                        -- that came or went with it
  state         TEXT NOT NULL,
  reference     TEXT NOT NULL,
  vehicle       TEXT NOT NULL,
  engine        TEXT NOT NULL,
  seen          TEXT NOT NULL,
  note          TEXT NOT NULL,
  part          TEXT NOT NULL,
  cause         TEXT NOT NULL,
  symptom       TEXT NOT NULL,
  deleted       TEXT
) STRICT;
CREATE INDEX job_step_by_job ON job_step (job, id);

-- What a job is found by, folded; short rows side by side, looked through from the newest.
CREATE TABLE job_search (
  job           INTEGER PRIMARY KEY REFERENCES job,
  words         TEXT NOT NULL
) STRICT;
INSERT INTO job_search SELECT id, lower(reference || ' ' || note) FROM job;

-- Every piece that came or went. Nothing here is ever changed or taken out, but what would name the customer of an erased job.
CREATE TABLE stock_movement (
  id            INTEGER PRIMARY KEY,
  at            TEXT NOT NULL,                  -- UTC, ISO 8601
  who           TEXT NOT NULL,
  kind          TEXT NOT NULL CHECK (kind IN ('sale', 'receipt', 'count', 'move', 'undo')),
  sender        TEXT NOT NULL,
  bin           TEXT NOT NULL,
  change        INTEGER NOT NULL,               -- pieces that came into the bin; negative: that went out of it
  left_in_bin   INTEGER NOT NULL CHECK (left_in_bin >= 0),   -- afterwards
  other_bin     TEXT CHECK (other_bin <> bin),  -- where a move went to, which got what the bin lost
  note          TEXT NOT NULL DEFAULT '',
  job           INTEGER REFERENCES job,
  undoes        INTEGER REFERENCES stock_movement,
  CHECK ((kind = 'undo') = (undoes IS NOT NULL)),
  CHECK (kind <> 'move' OR other_bin IS NOT NULL)
) STRICT;
CREATE UNIQUE INDEX stock_movement_undone_once ON stock_movement (undoes) WHERE undoes IS NOT NULL;
CREATE INDEX stock_movement_by_sender ON stock_movement (sender, id);
CREATE INDEX stock_movement_by_job ON stock_movement (job) WHERE job IS NOT NULL;
