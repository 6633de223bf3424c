-- Turned sittings: views joined into one plan, and the light that each side of a plant has had.

-- Who told the turn; null with it.
ALTER TABLE views ADD COLUMN turn_from TEXT CHECK (turn_from IN ('grower', 'collar'));
UPDATE views SET turn_from = 'grower' WHERE turn_deg IS NOT NULL;

-- JSON: everyDays (null: no reminder), byDeg, way.
ALTER TABLE plants ADD COLUMN turn_rhythm TEXT NOT NULL DEFAULT '{"everyDays":7,"byDeg":90,"way":"clockwise"}';

-- Where a stand is on earth. No measure depends on it, so it belongs to no version.
ALTER TABLE stands ADD COLUMN latitude_deg REAL;
ALTER TABLE stands ADD COLUMN light_bearing_deg REAL;

-- The pot was turned: from that day on this azimuth faces the light.
CREATE TABLE turns (
  id              TEXT PRIMARY KEY,
  plant_id        TEXT NOT NULL REFERENCES plants (id),
  day             TEXT NOT NULL,
  faces_light_deg REAL NOT NULL,
  note            TEXT NOT NULL,
  removed_at      TEXT
) STRICT;
CREATE INDEX turns_of_plant ON turns (plant_id);
