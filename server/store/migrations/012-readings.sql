-- For stores of many years: the few numbers of a photo's newest measurement that are asked of many photos at once, so that no page
-- reads whole reports for them; and the sittings that joining has yet to look at, so that it need not look at all.

CREATE TABLE readings (
  view_id           TEXT PRIMARY KEY REFERENCES views (id),
  measurement_id    INTEGER NOT NULL,
  method_version    TEXT NOT NULL,
  status            TEXT,
  -- Why the photo is compared with no other; null when it may be.
  not_compared      TEXT,
  flower_share      REAL,
  flower_plus_minus REAL,
  tightness         REAL,
  -- Where white is known from in the leaf's look; null without a look.
  look_from         TEXT
) STRICT;

CREATE TRIGGER reading_of_measurement AFTER INSERT ON measurements BEGIN
  INSERT OR REPLACE INTO readings
    SELECT new.view_id, new.id, new.method_version, json_extract(new.report, '$.status'),
      json_extract(new.report, '$.notCompared'),
      coalesce(json_extract(new.report, '$.flower.share'), json_extract(new.report, '$.canopy.flowerShare')),
      json_extract(new.report, '$.flower.plusMinus'), json_extract(new.report, '$.gaps.tightness'),
      json_extract(new.leaf_look, '$.from');
END;

CREATE TRIGGER reading_of_changed_method AFTER UPDATE OF method_version ON measurements BEGIN
  UPDATE readings SET method_version = new.method_version WHERE measurement_id = new.id AND view_id = new.view_id;
END;

INSERT INTO readings
  SELECT view_id, id, method_version, json_extract(report, '$.status'), json_extract(report, '$.notCompared'),
    coalesce(json_extract(report, '$.flower.share'), json_extract(report, '$.canopy.flowerShare')),
    json_extract(report, '$.flower.plusMinus'), json_extract(report, '$.gaps.tightness'), json_extract(leaf_look, '$.from')
  FROM measurements
  WHERE id = (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = measurements.view_id);

CREATE INDEX readings_by_method ON readings (method_version);
CREATE INDEX measurements_by_lessons ON measurements (lessons) WHERE lessons <> '[]';
CREATE INDEX joinings_unfinished ON joinings (sitting_id) WHERE state <> 'ready';
-- The facts of a joining begin with the method it was made by.
CREATE INDEX joinings_by_method ON joinings (substr(facts, 1, instr(facts, ',')));

CREATE TABLE sittings_to_look_at (
  sitting_id TEXT PRIMARY KEY REFERENCES sittings (id)
) STRICT;
INSERT INTO sittings_to_look_at SELECT id FROM sittings;

CREATE TRIGGER look_at_added_view AFTER INSERT ON views BEGIN
  INSERT OR IGNORE INTO sittings_to_look_at VALUES (new.sitting_id);
END;
CREATE TRIGGER look_at_changed_view AFTER UPDATE OF sitting_id, turn_deg, state, removed_at, received_at ON views BEGIN
  INSERT OR IGNORE INTO sittings_to_look_at VALUES (old.sitting_id), (new.sitting_id);
END;
CREATE TRIGGER look_at_measured_view AFTER INSERT ON measurements BEGIN
  INSERT OR IGNORE INTO sittings_to_look_at SELECT sitting_id FROM views WHERE id = new.view_id;
END;
CREATE TRIGGER look_at_changed_sitting AFTER UPDATE OF worked_at, stand_version_id ON sittings BEGIN
  INSERT OR IGNORE INTO sittings_to_look_at VALUES (new.id);
END;
CREATE TRIGGER look_at_changed_stand AFTER UPDATE OF camera_height_mm ON stand_versions BEGIN
  INSERT OR IGNORE INTO sittings_to_look_at SELECT id FROM sittings WHERE stand_version_id = new.id;
END;
CREATE TRIGGER look_at_changed_joining AFTER UPDATE OF facts ON joinings WHEN new.facts = '' BEGIN
  INSERT OR IGNORE INTO sittings_to_look_at VALUES (new.sitting_id);
END;
