-- Finding things by what is typed. Nothing here is a fact: it can be thrown away and is made again from the rows. It belongs to no pack and is no part of
-- the exchange format.

CREATE TABLE search_index (                       -- one row, or none while it has not been made yet
  id           INTEGER PRIMARY KEY CHECK (id = 1),
  version      INTEGER NOT NULL,                  -- of what stands in data: see src/catalog/search_block.h
  build        INTEGER NOT NULL,                  -- counts on, so that a reader knows when to read it again
  data         BLOB NOT NULL
) STRICT;

CREATE TABLE search_touched (                     -- what came, changed or went since, in that order
  id           INTEGER PRIMARY KEY,
  thing        TEXT NOT NULL,                     -- the table
  key          TEXT NOT NULL
) STRICT;

-- The older numbers of a part.
CREATE INDEX stands_in_for_by_sender ON stands_in_for (sender);
