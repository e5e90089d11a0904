-- The bench: the shop's own meters, baths and measured runs. None of it belongs to a pack and none is part of the exchange format. A run becomes part
-- of matching by the curve made of it, which is a row of curve and sample as any other, the shop's own, from a source of kind 'bench'.

-- A magnet that takes a crossed coil's needle home without current. All three or none.
ALTER TABLE gauge ADD COLUMN magnet_strength REAL CHECK (magnet_strength >= 0);   -- its field as a part of the coils' own, lead grounded
ALTER TABLE gauge ADD COLUMN magnet_pull REAL;                                    -- where it alone would turn the needle
ALTER TABLE gauge ADD COLUMN magnet_weakening REAL CHECK (magnet_weakening > 0)   -- ohms of the sender at which the coils' currents share twice the denominator
  CHECK ((magnet_strength IS NULL) = (magnet_pull IS NULL) AND (magnet_pull IS NULL) = (magnet_weakening IS NULL))
  CHECK (magnet_strength IS NULL OR (movement = 'crossed coil' AND magnet_strength < 0.5));

-- What is on the bench --------------------------------------------------------------------------------------------------

CREATE TABLE meter (
  name         TEXT NOT NULL PRIMARY KEY CHECK (name <> ''),
  leads        REAL CHECK (leads >= 0),          -- test leads held together; none: never zeroed
  leads_u      REAL CHECK (leads_u >= 0),        -- standard uncertainty of that from one touch to the next
  note         TEXT NOT NULL DEFAULT '',         -- whose it is, when it was last compared
  CHECK ((leads IS NULL) = (leads_u IS NULL))
) STRICT;

CREATE TABLE meter_range (                       -- ±(of_reading · reading + counts · resolution), as its data sheet has it
  meter        TEXT NOT NULL REFERENCES meter,
  full_scale   REAL NOT NULL CHECK (full_scale > 0),
  resolution   REAL NOT NULL CHECK (resolution > 0 AND resolution <= full_scale),
  of_reading   REAL NOT NULL CHECK (of_reading >= 0 AND of_reading < 1),
  counts       REAL NOT NULL CHECK (counts >= 0),
  milliamperes REAL CHECK (milliamperes > 0),    -- steady current through the sender
  cell         REAL CHECK (cell > 0),            -- or a cell of so many volts behind the ohms at mid scale
  mid_scale    REAL CHECK (mid_scale > 0),
  PRIMARY KEY (meter, full_scale),
  CHECK ((cell IS NULL) = (mid_scale IS NULL)),
  CHECK (milliamperes IS NULL OR cell IS NULL)
) STRICT, WITHOUT ROWID;

CREATE TABLE thermometer (
  name         TEXT NOT NULL PRIMARY KEY CHECK (name <> ''),
  accuracy     REAL NOT NULL CHECK (accuracy > 0),   -- K
  stated       TEXT NOT NULL CHECK (stated IN ('limits', 'standard uncertainty')),
  note         TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE bath (
  name         TEXT NOT NULL PRIMARY KEY CHECK (name <> ''),
  kind         TEXT NOT NULL CHECK (kind IN ('crushed ice', 'ice cubes', 'boiling water', 'thermometer')),
  altitude     REAL,                             -- metres, for boiling water
  altitude_u   REAL CHECK (altitude_u >= 0),     -- standard uncertainty, metres
  barometer_u  REAL CHECK (barometer_u >= 0),    -- standard uncertainty of the shop's barometer, kPa
  reduced      TEXT CHECK (reduced IN ('to sea level', 'no', 'not known')),   -- how that barometer shows its pressure
  thermometer  TEXT REFERENCES thermometer,
  note         TEXT NOT NULL DEFAULT '',
  CHECK ((kind = 'thermometer') = (thermometer IS NOT NULL))
) STRICT;

-- What was measured -----------------------------------------------------------------------------------------------------

-- One file that came in. Its row stays when the import is undone, everything else of it goes.
CREATE TABLE bench_import (
  id           INTEGER PRIMARY KEY,
  file         TEXT NOT NULL,                    -- name without folder
  hash         TEXT NOT NULL CHECK (length(hash) = 64),   -- SHA-256 of its bytes, lower-case hexadecimal
  bytes        INTEGER NOT NULL CHECK (bytes >= 0),
  at           TEXT NOT NULL,                    -- UTC, ISO 8601
  who          TEXT NOT NULL,
  meter        TEXT NOT NULL,                    -- in words, as it was then; empty: not said
  bath         TEXT NOT NULL,
  plan         TEXT NOT NULL,                    -- how the file was read, in one line
  rows         INTEGER NOT NULL CHECK (rows >= 0),
  curves       INTEGER NOT NULL CHECK (curves >= 0),
  undone       TEXT,                             -- UTC, ISO 8601
  undone_by    TEXT,
  CHECK ((undone IS NULL) = (undone_by IS NULL))
) STRICT;
CREATE UNIQUE INDEX bench_import_once ON bench_import (hash) WHERE undone IS NULL;

-- One measured curve, out of a file or entered by hand. Part and family are what is written on the bag: a pack may not (or no longer) have them.
CREATE TABLE bench_run (
  id           INTEGER PRIMARY KEY,
  import       INTEGER REFERENCES bench_import,  -- none: entered by hand
  part         TEXT NOT NULL DEFAULT '',         -- part number; empty: not said yet
  lot          TEXT NOT NULL DEFAULT '',
  family       TEXT NOT NULL DEFAULT '',         -- which the part claims to be
  direction    TEXT CHECK (direction IN ('heating', 'cooling')),   -- none: both, or not said
  title        TEXT NOT NULL DEFAULT '',
  note         TEXT NOT NULL DEFAULT '',
  at           TEXT NOT NULL,
  who          TEXT NOT NULL,
  meter        TEXT NOT NULL,
  bath         TEXT NOT NULL,
  rows         INTEGER NOT NULL CHECK (rows >= 0),
  curve        TEXT REFERENCES curve             -- made of it; none: not yet
) STRICT;
CREATE INDEX bench_run_by_import ON bench_run (import) WHERE import IS NOT NULL;
CREATE INDEX bench_run_by_curve ON bench_run (curve) WHERE curve IS NOT NULL;
CREATE INDEX bench_run_by_plain_number ON bench_run (replace(replace(replace(replace(upper(part), ' ', ''), '-', ''), '.', ''), '/', ''));

-- Readings as they were written down, those of one run side by side. One key of run and ordinal: two columns and a key of their own cost a quarter
-- more time to import and a seventh more space.
CREATE TABLE bench_reading (
  id           INTEGER PRIMARY KEY,              -- run · 2^24 + ordinal, from 1 in the order of the file
  temperature  REAL NOT NULL CHECK (temperature > -273.15),
  ohms         REAL CHECK (ohms > 0),            -- none: overload
  seconds      REAL,                             -- from the start of the log
  direction    TEXT CHECK (direction IN ('heating', 'cooling')),
  u            REAL CHECK (u >= 0),              -- standard uncertainty, K, as it was judged then
  u_ln_ohms    REAL CHECK (u_ln_ohms >= 0),
  run          INTEGER GENERATED ALWAYS AS (id >> 24) VIRTUAL,
  ordinal      INTEGER GENERATED ALWAYS AS (id & 16777215) VIRTUAL
) STRICT;

-- How files of that shape are read, as a person put it right last time.
CREATE TABLE reading_habit (
  signature    TEXT NOT NULL PRIMARY KEY,        -- of the file's shape
  plan         TEXT NOT NULL,
  logger       TEXT NOT NULL DEFAULT '',         -- where such files come from, in the shop's words
  at           TEXT NOT NULL,
  who          TEXT NOT NULL
) STRICT;
