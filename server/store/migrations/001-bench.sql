-- Days are YYYY-MM-DD text; times are ISO 8601 text in UTC, except taken_at: the camera's local time, no zone.
-- removed_at: taken away by the grower, kept for bringing back.

CREATE TABLE photos (
  sha256     TEXT PRIMARY KEY CHECK (length(sha256) = 64),
  format     TEXT NOT NULL CHECK (format IN ('jpeg', 'png', 'webp', 'heic')),
  byte_count INTEGER NOT NULL,
  width_px   INTEGER NOT NULL,
  height_px  INTEGER NOT NULL,
  taken_at   TEXT,
  kept_at    TEXT NOT NULL
) STRICT;

CREATE TABLE plants (
  id         TEXT PRIMARY KEY,
  name       TEXT NOT NULL,
  kind       TEXT NOT NULL,
  variety    TEXT NOT NULL,
  rim_mm     REAL,
  show_day   TEXT,
  created_at TEXT NOT NULL,
  put_away   INTEGER NOT NULL DEFAULT 0,
  sample     INTEGER NOT NULL DEFAULT 0
) STRICT;

-- The fixed camera place. One a plant for now; sittings already say which.
CREATE TABLE stands (
  id          TEXT PRIMARY KEY,
  plant_id    TEXT NOT NULL REFERENCES plants (id),
  empty_photo TEXT REFERENCES photos (sha256)
) STRICT;
CREATE INDEX stands_of_plant ON stands (plant_id);

CREATE TABLE sittings (
  id       TEXT PRIMARY KEY,
  plant_id TEXT NOT NULL REFERENCES plants (id),
  stand_id TEXT NOT NULL REFERENCES stands (id),
  day      TEXT NOT NULL,
  UNIQUE (plant_id, day)
) STRICT;

CREATE TABLE views (
  id          TEXT PRIMARY KEY,
  sitting_id  TEXT NOT NULL REFERENCES sittings (id),
  photo       TEXT NOT NULL REFERENCES photos (sha256),
  file_name   TEXT NOT NULL,
  turn_deg    REAL,
  taken_at    TEXT,
  taken_from  TEXT NOT NULL CHECK (taken_from IN ('exif', 'upload', 'grower')),
  received_at TEXT NOT NULL,
  state       TEXT NOT NULL CHECK (state IN ('received', 'measuring', 'measured', 'failed')),
  failure     TEXT,
  -- Grows whenever the view must be measured anew, so that a measurement under way for older facts is dropped.
  revision    INTEGER NOT NULL DEFAULT 1,
  removed_at  TEXT
) STRICT;
CREATE INDEX views_of_sitting ON views (sitting_id);
CREATE INDEX views_by_state ON views (state);
CREATE UNIQUE INDEX one_view_a_photo ON views (photo) WHERE removed_at IS NULL;

CREATE TABLE measurements (
  id             INTEGER PRIMARY KEY,
  view_id        TEXT NOT NULL REFERENCES views (id),
  method_version TEXT NOT NULL,
  measured_at    TEXT NOT NULL,
  report         TEXT NOT NULL,
  outline        TEXT NOT NULL,
  -- White-on-clear PNG of the canopy; null when nothing was measured.
  mask_png       BLOB
) STRICT;
CREATE INDEX measurements_of_view ON measurements (view_id, id);

CREATE TABLE stops (
  id         TEXT PRIMARY KEY,
  plant_id   TEXT NOT NULL REFERENCES plants (id),
  day        TEXT NOT NULL,
  depth      TEXT NOT NULL CHECK (depth IN ('tip', 'deep')),
  note       TEXT NOT NULL,
  removed_at TEXT
) STRICT;
CREATE INDEX stops_of_plant ON stops (plant_id);

CREATE TABLE notes (
  id         TEXT PRIMARY KEY,
  plant_id   TEXT NOT NULL REFERENCES plants (id),
  day        TEXT NOT NULL,
  text       TEXT NOT NULL,
  removed_at TEXT
) STRICT;
CREATE INDEX notes_of_plant ON notes (plant_id);
