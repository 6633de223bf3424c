-- Phones and other devices of the home network that were let in by a code shown at the desk.

CREATE TABLE phones (
  id            TEXT PRIMARY KEY,
  name          TEXT NOT NULL,
  first_seen_at TEXT NOT NULL,
  last_seen_at  TEXT NOT NULL,
  -- When it was let out again; null while it is let in.
  let_out_at    TEXT
) STRICT;

-- Signs what the phones carry. One row.
CREATE TABLE door_key (
  id  INTEGER PRIMARY KEY CHECK (id = 1),
  key TEXT NOT NULL
) STRICT;
