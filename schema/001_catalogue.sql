-- The catalogue: what the trade knows, each fact with its source, each row owned by the pack it came in or by the shop.
-- Dates are ISO 8601 text. Spans are half-open: from is in, until is out. A model year is not a calendar year.
-- Temperatures are °C, resistances Ω, lengths mm, torques N·m, angles degrees clockwise from straight up.

CREATE TABLE pack (
  id       TEXT NOT NULL PRIMARY KEY,          -- 'shop' is the shop's own
  title    TEXT NOT NULL,
  version  TEXT NOT NULL,
  licence  TEXT NOT NULL DEFAULT '',
  loaded   TEXT NOT NULL                       -- UTC, ISO 8601
) STRICT;

CREATE TABLE source (
  id         TEXT NOT NULL PRIMARY KEY,
  kind       TEXT NOT NULL CHECK (kind IN ('published', 'maker sheet', 'bench', 'common practice', 'demo')),
  citation   TEXT NOT NULL,
  confidence REAL NOT NULL CHECK (confidence BETWEEN 0 AND 1),
  pack       TEXT NOT NULL REFERENCES pack
) STRICT;

-- What joins to what ---------------------------------------------------------------------------------------------------

CREATE TABLE thread (
  id                TEXT NOT NULL PRIMARY KEY,  -- designation: 1/2-14 NPT, M16x1.5
  standard          TEXT NOT NULL,
  form              TEXT NOT NULL CHECK (form IN ('NPT', 'BSPT', 'UN', 'M')),
  flank_angle       REAL NOT NULL CHECK (flank_angle IN (55, 60)),
  pitch             REAL NOT NULL CHECK (pitch > 0),
  diameter          REAL NOT NULL CHECK (diameter > 0),        -- crest diameter at the plane where it is gauged
  tapered           INTEGER NOT NULL CHECK (tapered IN (0, 1)),
  source            TEXT NOT NULL REFERENCES source,
  pack              TEXT NOT NULL REFERENCES pack
) STRICT;

CREATE TABLE terminal (
  id          TEXT NOT NULL PRIMARY KEY,
  name        TEXT NOT NULL,                    -- as a person says it: blade 6.3 mm
  kind        TEXT NOT NULL CHECK (kind IN ('blade', 'stud', 'pin', 'snap', 'socket', 'wire')),
  size        REAL CHECK (size > 0),
  contacts    INTEGER NOT NULL CHECK (contacts BETWEEN 1 AND 4),
  look        TEXT NOT NULL,                    -- how to tell it at the wire end
  source      TEXT NOT NULL REFERENCES source,
  pack        TEXT NOT NULL REFERENCES pack
) STRICT;

CREATE TABLE pigtail (
  id          TEXT NOT NULL PRIMARY KEY,
  harness     TEXT NOT NULL REFERENCES terminal,  -- the wire end it takes
  sender      TEXT NOT NULL REFERENCES terminal,  -- the sender terminal it fits
  source      TEXT NOT NULL REFERENCES source,
  pack        TEXT NOT NULL REFERENCES pack
) STRICT;

CREATE TABLE adapter (
  id             TEXT NOT NULL PRIMARY KEY,
  port           TEXT NOT NULL REFERENCES thread,  -- the port it screws into
  sender         TEXT NOT NULL REFERENCES thread,  -- the sender it takes
  immersion_lost REAL NOT NULL CHECK (immersion_lost >= 0),
  source         TEXT NOT NULL REFERENCES source,
  pack           TEXT NOT NULL REFERENCES pack,
  CHECK (port <> sender)
) STRICT;

-- Senders and their curves ---------------------------------------------------------------------------------------------

CREATE TABLE family (
  id          TEXT NOT NULL PRIMARY KEY,
  name        TEXT NOT NULL,
  measurand   TEXT NOT NULL CHECK (measurand IN ('coolant temperature', 'oil temperature', 'oil pressure', 'fuel level')),
  direction   TEXT NOT NULL CHECK (direction IN ('falling', 'rising')),
  tolerance   REAL CHECK (tolerance > 0 AND tolerance < 1),   -- of ohms, as a part: 0.08; none: 0.10 is assumed and flagged
  cold_ohms   REAL CHECK (cold_ohms > 0),
  hot_ohms    REAL CHECK (hot_ohms > 0),
  cold_low    REAL, cold_high REAL,             -- temperature of the cold ohms: equal where stated, else the span it may lie in
  hot_low     REAL, hot_high  REAL,
  note        TEXT NOT NULL DEFAULT '',
  source      TEXT NOT NULL REFERENCES source,
  pack        TEXT NOT NULL REFERENCES pack,
  CHECK ((cold_ohms IS NULL) = (hot_ohms IS NULL)),
  CHECK (cold_ohms IS NULL OR (cold_low <= cold_high AND hot_low <= hot_high AND cold_high < hot_low))
) STRICT;

CREATE TABLE sender (
  id          TEXT NOT NULL PRIMARY KEY,        -- part number
  name        TEXT NOT NULL,
  kind        TEXT NOT NULL CHECK (kind IN ('variable sender', 'warning switch', 'sender with lamp switch', 'pulsing contact',
                                            'controller sensor', 'fan switch')),
  family      TEXT REFERENCES family,           -- none for switches and pulsing contacts
  thread      TEXT NOT NULL REFERENCES thread,
  terminal    TEXT NOT NULL REFERENCES terminal,
  reach       REAL CHECK (reach > 0),           -- below the hex
  hex         REAL CHECK (hex > 0),
  torque_low  REAL CHECK (torque_low > 0),
  torque_high REAL CHECK (torque_high >= torque_low),
  grounding   TEXT NOT NULL CHECK (grounding IN ('case', 'two-wire')),
  era_from    INTEGER CHECK (era_from BETWEEN 1900 AND 2100),   -- calendar years it was fitted new
  era_until   INTEGER CHECK (era_until > era_from),
  source      TEXT NOT NULL REFERENCES source,
  pack        TEXT NOT NULL REFERENCES pack
) STRICT;
CREATE INDEX sender_by_thread ON sender (thread);
CREATE INDEX sender_by_family ON sender (family);
CREATE INDEX sender_by_plain_number ON sender (replace(replace(replace(replace(upper(id), ' ', ''), '-', ''), '.', ''), '/', ''));

-- A curve belongs to a family, or to one lot of one part number: a part number is not a curve.
CREATE TABLE curve (
  id           TEXT NOT NULL PRIMARY KEY,
  family       TEXT REFERENCES family,
  sender       TEXT REFERENCES sender,
  lot          TEXT NOT NULL DEFAULT '',
  model        TEXT NOT NULL CHECK (model IN ('beta', 'steinhart-hart', 'exponential', 'polynomial', 'table')),
  coefficients TEXT NOT NULL DEFAULT '',        -- numbers separated by blanks, in the order of the model's definition; a table's points are samples
  covariance   TEXT NOT NULL DEFAULT '',        -- square, row by row, blanks between; empty where not known
  floor        REAL NOT NULL DEFAULT 0 CHECK (floor >= 0),  -- least standard uncertainty of ln R
  valid_low    REAL NOT NULL,
  valid_high   REAL NOT NULL,
  source       TEXT NOT NULL REFERENCES source,
  pack         TEXT NOT NULL REFERENCES pack,
  CHECK (valid_low < valid_high),
  CHECK ((family IS NULL) <> (sender IS NULL))
) STRICT;
CREATE INDEX curve_by_family ON curve (family) WHERE family IS NOT NULL;
CREATE INDEX curve_by_sender ON curve (sender) WHERE sender IS NOT NULL;

CREATE TABLE sample (
  curve       TEXT NOT NULL REFERENCES curve,
  ordinal     INTEGER NOT NULL CHECK (ordinal >= 1),
  temperature REAL NOT NULL,
  ohms        REAL NOT NULL CHECK (ohms > 0),
  direction   TEXT NOT NULL DEFAULT 'heating' CHECK (direction IN ('heating', 'cooling')),
  pack        TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (curve, ordinal)
) STRICT, WITHOUT ROWID;

CREATE TABLE stands_in_for (
  sender      TEXT NOT NULL REFERENCES sender,  -- the newer part
  replaces    TEXT NOT NULL REFERENCES sender,
  since       TEXT NOT NULL,
  source      TEXT NOT NULL REFERENCES source,
  pack        TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (replaces, sender),
  CHECK (sender <> replaces)
) STRICT, WITHOUT ROWID;

-- The dash -------------------------------------------------------------------------------------------------------------

CREATE TABLE gauge (
  id            TEXT NOT NULL PRIMARY KEY,
  name          TEXT NOT NULL,
  family        TEXT NOT NULL REFERENCES family,  -- the senders it was built for
  movement      TEXT NOT NULL CHECK (movement IN ('crossed coil', 'bimetal', 'bench points', 'unknown')),
  grounded      REAL,                            -- needle angle, lead grounded
  sweep         REAL,                            -- crossed coil: from there to lead open
  half          REAL CHECK (half > 0),           -- crossed coil: ohms at half the sweep
  feed_coil     REAL CHECK (feed_coil > 0),
  ground_coil   REAL CHECK (ground_coil > 0),
  rest          REAL,                            -- bimetal: needle angle without current
  heater        REAL CHECK (heater > 0),
  regulated     REAL CHECK (regulated > 0),      -- volts RMS behind the regulator
  key_off       TEXT NOT NULL CHECK (key_off IN ('stays', 'cold', 'hot', 'unknown')),
  tolerance     REAL CHECK (tolerance >= 0),     -- standard uncertainty of a good gauge as a part of reading; none: 0.05 assumed and flagged
  low_stop      REAL NOT NULL,
  high_stop     REAL NOT NULL,
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack
) STRICT;

CREATE TABLE dial_mark (
  gauge       TEXT NOT NULL REFERENCES gauge,
  ordinal     INTEGER NOT NULL CHECK (ordinal >= 1),   -- by rising temperature
  kind        TEXT NOT NULL CHECK (kind IN ('tick', 'numbered', 'cold', 'normal low', 'normal high', 'hot')),
  text        TEXT NOT NULL DEFAULT '',
  temperature REAL,
  angle       REAL NOT NULL,
  pack        TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (gauge, ordinal)
) STRICT, WITHOUT ROWID;

CREATE TABLE movement_point (                     -- bench points of a gauge: ohms on the lead, needle angle
  gauge       TEXT NOT NULL REFERENCES gauge,
  ordinal     INTEGER NOT NULL CHECK (ordinal >= 1),
  ohms        REAL NOT NULL CHECK (ohms >= 0),
  angle       REAL NOT NULL,
  pack        TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (gauge, ordinal)
) STRICT, WITHOUT ROWID;

CREATE TABLE make (
  id          TEXT NOT NULL PRIMARY KEY,
  name        TEXT NOT NULL,
  pack        TEXT NOT NULL REFERENCES pack
) STRICT;

CREATE TABLE vehicle_line (
  id            TEXT NOT NULL PRIMARY KEY,
  make          TEXT NOT NULL REFERENCES make,
  name          TEXT NOT NULL,
  also          TEXT NOT NULL DEFAULT '',       -- other names people use, separated by ';'
  year_from     INTEGER NOT NULL CHECK (year_from BETWEEN 1900 AND 2100),   -- model years
  year_until    INTEGER NOT NULL CHECK (year_until > year_from),
  volts         REAL NOT NULL CHECK (volts IN (6, 12, 24)),
  grounded_pole TEXT NOT NULL CHECK (grounded_pole IN ('negative', 'positive')),
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack
) STRICT;

CREATE TABLE cluster (
  id            TEXT NOT NULL PRIMARY KEY,
  line          TEXT NOT NULL REFERENCES vehicle_line,
  option        TEXT NOT NULL,                  -- 'standard', 'gauge package', …
  year_from     INTEGER NOT NULL,
  year_until    INTEGER NOT NULL CHECK (year_until > year_from),
  built_from    TEXT CHECK (built_from = date(built_from, '+0 days')),   -- build dates within those years; none: all of them
  built_until   TEXT CHECK (built_until = date(built_until, '+0 days')),
  serial_from   INTEGER CHECK (serial_from >= 0),   -- the change by the number part of the serial, where it is told so
  serial_until  INTEGER CHECK (serial_until > 0),
  gauge         TEXT REFERENCES gauge,          -- none: a warning lamp only
  terminal      TEXT REFERENCES terminal,       -- at the engine end of the lead
  lead_awg      INTEGER CHECK (lead_awg BETWEEN 8 AND 24),
  lead_length   REAL CHECK (lead_length > 0),
  tell          TEXT NOT NULL DEFAULT '',       -- how to know it by looking
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack,
  CHECK (built_from IS NULL OR built_until IS NULL OR built_from < built_until),
  CHECK (serial_from IS NULL OR serial_until IS NULL OR serial_from < serial_until)
) STRICT;
CREATE INDEX cluster_by_line ON cluster (line, year_from);

-- The engine -----------------------------------------------------------------------------------------------------------

CREATE TABLE engine_family (
  id            TEXT NOT NULL PRIMARY KEY,
  make          TEXT NOT NULL REFERENCES make,
  name          TEXT NOT NULL,                  -- inline six, 3.6 l
  thermostat    REAL NOT NULL CHECK (thermostat BETWEEN 50 AND 110),  -- opens at, °C
  cap           REAL NOT NULL CHECK (cap >= 0), -- pressure cap, kPa above ambient
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack
) STRICT;

CREATE TABLE original_engine (
  line          TEXT NOT NULL REFERENCES vehicle_line,
  engine        TEXT NOT NULL REFERENCES engine_family,
  year_from     INTEGER NOT NULL,
  year_until    INTEGER NOT NULL CHECK (year_until > year_from),
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (line, engine, year_from)
) STRICT, WITHOUT ROWID;

-- How a date is written in a casting or stamp: fields in order. See src/dating.
CREATE TABLE date_layout (
  id            TEXT NOT NULL PRIMARY KEY,
  name          TEXT NOT NULL,
  found_on      TEXT NOT NULL CHECK (found_on IN ('head', 'block', 'intake', 'housing', 'assembly stamp')),
  example       TEXT NOT NULL,                  -- decodes under this layout
  example_date  TEXT NOT NULL CHECK (example_date = date(example_date, '+0 days')),
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack
) STRICT;

CREATE TABLE date_field (
  layout        TEXT NOT NULL REFERENCES date_layout,
  ordinal       INTEGER NOT NULL CHECK (ordinal >= 1),
  kind          TEXT NOT NULL CHECK (kind IN ('month letter', 'month letter without I', 'month number', 'day', 'year digit', 'year two digits',
                                              'year four digits', 'day of year', 'week', 'weekday', 'shift', 'clock dial', 'fixed text', 'separator')),
  text          TEXT NOT NULL DEFAULT '',       -- fixed text; allowed shift letters; separators that may stand here
  optional      INTEGER NOT NULL DEFAULT 0 CHECK (optional IN (0, 1)),
  pack          TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (layout, ordinal)
) STRICT, WITHOUT ROWID;

CREATE TABLE casting (
  id            TEXT NOT NULL PRIMARY KEY,      -- casting number
  engine        TEXT NOT NULL REFERENCES engine_family,
  role          TEXT NOT NULL CHECK (role IN ('head', 'intake', 'housing', 'block')),
  side          TEXT NOT NULL CHECK (side IN ('left', 'right', 'either', 'only')),
  cast_from     TEXT NOT NULL CHECK (cast_from = date(cast_from, '+0 days')),
  cast_until    TEXT NOT NULL CHECK (cast_until = date(cast_until, '+0 days')),
  layout        TEXT REFERENCES date_layout,
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack,
  CHECK (cast_from < cast_until)
) STRICT;
CREATE INDEX casting_by_engine ON casting (engine, cast_from);
CREATE INDEX casting_by_plain_number ON casting (replace(replace(replace(replace(upper(id), ' ', ''), '-', ''), '.', ''), '/', ''));

CREATE TABLE port (
  casting       TEXT NOT NULL REFERENCES casting,
  location      TEXT NOT NULL,                  -- 'front of the head', 'between cylinders 2 and 3', …
  thread        TEXT NOT NULL REFERENCES thread,
  depth         REAL CHECK (depth > 0),
  longest_reach REAL CHECK (longest_reach > 0),
  used_by       TEXT NOT NULL CHECK (used_by IN ('gauge sender', 'warning switch', 'controller sensor', 'fan switch', 'plug')),
  offset_k      REAL,                           -- coolant there minus coolant at the head's outlet, K; none: not known
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (casting, location)
) STRICT, WITHOUT ROWID;

-- Which sender was fitted where: the long table.
CREATE TABLE original_sender (
  id            INTEGER PRIMARY KEY,
  sender        TEXT NOT NULL REFERENCES sender,
  line          TEXT NOT NULL REFERENCES vehicle_line,
  engine        TEXT NOT NULL REFERENCES engine_family,
  year_from     INTEGER NOT NULL,
  year_until    INTEGER NOT NULL CHECK (year_until > year_from),
  source        TEXT NOT NULL REFERENCES source,
  pack          TEXT NOT NULL REFERENCES pack,
  UNIQUE (line, engine, year_from, sender)
) STRICT;
CREATE INDEX original_sender_by_sender ON original_sender (sender);

-- The shop -------------------------------------------------------------------------------------------------------------

CREATE TABLE stock (
  sender        TEXT NOT NULL REFERENCES sender,
  bin           TEXT NOT NULL,
  quantity      INTEGER NOT NULL CHECK (quantity >= 0),
  minimum       INTEGER NOT NULL DEFAULT 0 CHECK (minimum >= 0),
  pack          TEXT NOT NULL REFERENCES pack,
  PRIMARY KEY (sender, bin)
) STRICT, WITHOUT ROWID;

CREATE TABLE job (
  id            INTEGER PRIMARY KEY,
  opened        TEXT NOT NULL,
  reference     TEXT NOT NULL,                  -- the customer's own word for it; no more personal data than that
  note          TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE job_document (
  job           INTEGER NOT NULL REFERENCES job,
  ordinal       INTEGER NOT NULL CHECK (ordinal >= 1),
  kind          TEXT NOT NULL,
  made          TEXT NOT NULL,
  document      TEXT NOT NULL,                  -- JSON, checked before it comes here: json functions are barred in an untrusted schema
  PRIMARY KEY (job, ordinal)
) STRICT, WITHOUT ROWID;

CREATE TABLE change_log (
  id            INTEGER PRIMARY KEY,
  at            TEXT NOT NULL,
  who           TEXT NOT NULL,
  what          TEXT NOT NULL,                  -- 'pack loaded', 'row changed', …
  subject       TEXT NOT NULL,
  before        TEXT NOT NULL DEFAULT '',
  after         TEXT NOT NULL DEFAULT ''
) STRICT;

INSERT INTO pack (id, title, version, loaded) VALUES ('shop', 'The shop''s own rows', '', strftime('%Y-%m-%dT%H:%M:%SZ', 'now'));
