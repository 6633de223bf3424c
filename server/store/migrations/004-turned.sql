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

-- JSON: what measuring leaves for joining views: focalLengthPx, cameraDistanceMm.
ALTER TABLE measurements ADD COLUMN lens TEXT NOT NULL DEFAULT '{"focalLengthPx":null,"cameraDistanceMm":null}';

-- The views of a sitting joined into one plan. A sitting is joined anew when its facts differ from those noted here.
CREATE TABLE joinings (
  sitting_id TEXT PRIMARY KEY REFERENCES sittings (id),
  -- JSON: method and stand, and of each view its measurement and turn.
  facts      TEXT NOT NULL,
  state      TEXT NOT NULL CHECK (state IN ('measuring', 'ready', 'failed')),
  -- JSON of the last report that was made, with the views it rests on, in order; null before the first.
  report     TEXT,
  view_ids   TEXT NOT NULL DEFAULT '[]',
  -- JSON of the solid of that report; null until it was asked for.
  hull       TEXT
) STRICT;
