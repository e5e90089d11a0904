-- What a match asks of a large catalogue. Indexes only: facts stay as they are.

-- Senders that are judged alike stand side by side: catalog/sender_groups.h asks with these very words.
CREATE INDEX sender_by_likeness ON sender (thread,
  coalesce(family, '') || char(31) || kind || char(31) || terminal || char(31) || grounding || char(31) || coalesce(reach, '') || char(31) ||
  coalesce(hex, '') || char(31) || coalesce(torque_low, '') || char(31) || coalesce(torque_high, ''), id);
DROP INDEX sender_by_thread;

-- What is on the shelf, walked through by number, finds its group without going to the rows.
CREATE INDEX sender_by_number ON sender (id, thread, coalesce(family, '') || char(31) || kind || char(31) || terminal);

-- What an engine left the works with, whatever the line.
CREATE INDEX original_sender_by_engine ON original_sender (engine, sender, year_from, year_until);

-- A vehicle line by any of its names.
CREATE INDEX vehicle_line_by_id ON vehicle_line (lower(id));
CREATE INDEX vehicle_line_by_name ON vehicle_line (lower(name));
CREATE INDEX vehicle_line_also ON vehicle_line (also) WHERE also <> '';
