-- A stand is shared by many plants and has versions: what matters of it may change, and each sitting keeps the version
-- it was taken on.

-- Until now each plant had a stand of its own that held nothing but an empty photo, which stays with the plant.
ALTER TABLE plants ADD COLUMN empty_photo TEXT REFERENCES photos (sha256);
UPDATE plants SET empty_photo =
  (SELECT empty_photo FROM stands WHERE stands.plant_id = plants.id AND empty_photo IS NOT NULL LIMIT 1);
ALTER TABLE sittings DROP COLUMN stand_id;
DROP TABLE stands;

CREATE TABLE stands (
  id         TEXT PRIMARY KEY,
  name       TEXT NOT NULL,
  created_at TEXT NOT NULL,
  put_away   INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE stand_versions (
  id                 INTEGER PRIMARY KEY,
  stand_id           TEXT NOT NULL REFERENCES stands (id),
  number             INTEGER NOT NULL,
  since_day          TEXT NOT NULL,
  -- What became different, in words.
  changed            TEXT NOT NULL,
  light_side         TEXT,
  backdrop           TEXT,
  camera_distance_mm REAL,
  camera_height_mm   REAL,
  scale_from         TEXT NOT NULL CHECK (scale_from IN ('sheet', 'rim', 'none')),
  -- JSON: paper, place, plantInFrontMm.
  sheet              TEXT,
  empty_photo        TEXT REFERENCES photos (sha256),
  -- JSON: what was seen of the empty photo when it came.
  empty_check        TEXT,
  -- The first photo taken on this version: what later ones are brought in line with while there is no empty photo.
  first_photo        TEXT REFERENCES photos (sha256),
  UNIQUE (stand_id, number)
) STRICT;

-- null: without a stand.
ALTER TABLE plants ADD COLUMN stand_id TEXT REFERENCES stands (id);
ALTER TABLE sittings ADD COLUMN stand_version_id INTEGER REFERENCES stand_versions (id);
CREATE INDEX plants_of_stand ON plants (stand_id);
CREATE INDEX sittings_of_stand_version ON sittings (stand_version_id);
