-- The season: shows and who is entered for them, what is done and seen, what is set aside, the grower's own figures.

CREATE TABLE shows (
  id         TEXT PRIMARY KEY,
  name       TEXT NOT NULL,
  day        TEXT NOT NULL,
  place      TEXT NOT NULL,
  rules      TEXT NOT NULL,
  -- JSON: list of id, name, potMm, widestMm, tallestMm, rules.
  classes    TEXT NOT NULL,
  removed_at TEXT
) STRICT;
CREATE INDEX shows_by_day ON shows (day);

CREATE TABLE entries (
  plant_id TEXT NOT NULL REFERENCES plants (id),
  show_id  TEXT NOT NULL REFERENCES shows (id),
  -- One of the show's classes; null while that is not settled.
  class_id TEXT,
  -- What happened on the day; '' before.
  result   TEXT NOT NULL,
  PRIMARY KEY (plant_id, show_id)
) STRICT;
CREATE INDEX entries_of_show ON entries (show_id);

-- The show that the grower picked for a plant's stops; null: the first to come.
ALTER TABLE plants ADD COLUMN aim_show_id TEXT REFERENCES shows (id);

-- Until now a plant had the day of its show and nothing else of it.
INSERT INTO shows (id, name, day, place, rules, classes)
  SELECT lower(hex(randomblob(16))), 'Show', show_day, '', '', '[]'
  FROM (SELECT DISTINCT show_day FROM plants WHERE show_day IS NOT NULL);
INSERT INTO entries (plant_id, show_id, class_id, result)
  SELECT plants.id, shows.id, NULL, '' FROM plants JOIN shows ON shows.day = plants.show_day;
ALTER TABLE plants DROP COLUMN show_day;

-- What was done and seen; stops and turns have tables of their own.
ALTER TABLE notes ADD COLUMN kind TEXT NOT NULL DEFAULT 'note';

-- A word on a stretch of time; plant_id null: on all plants.
CREATE TABLE season_notes (
  id         TEXT PRIMARY KEY,
  plant_id   TEXT REFERENCES plants (id),
  from_day   TEXT NOT NULL,
  to_day     TEXT NOT NULL,
  text       TEXT NOT NULL,
  -- 1: nothing is learned from records that it touches.
  sets_aside INTEGER NOT NULL CHECK (sets_aside IN (0, 1)),
  removed_at TEXT
) STRICT;

-- The grower's own figures in the table of stops.
CREATE TABLE own_figures (
  key   TEXT PRIMARY KEY,
  value REAL NOT NULL
) STRICT;

-- What became of a piece of dated work, which itself is reckoned anew from stops, shows and records.
CREATE TABLE work_words (
  plant_id TEXT NOT NULL REFERENCES plants (id),
  work_key TEXT NOT NULL,
  said     TEXT NOT NULL CHECK (said IN ('done', 'moved', 'skipped')),
  -- The day it was done on, moved to or skipped.
  day      TEXT NOT NULL,
  reason   TEXT NOT NULL,
  PRIMARY KEY (plant_id, work_key)
) STRICT;

-- Why a sitting is kept out of the trend and the advice by the grower, as limp from drought; null: it is not.
ALTER TABLE sittings ADD COLUMN left_out TEXT;

-- Makes the calendar's address one that cannot be guessed. One row.
CREATE TABLE calendar_key (
  id  INTEGER PRIMARY KEY CHECK (id = 1),
  key TEXT NOT NULL
) STRICT;

-- Work of the grower's own: feeding, potting on, anything.
CREATE TABLE own_work (
  id         TEXT PRIMARY KEY,
  plant_id   TEXT NOT NULL REFERENCES plants (id),
  kind       TEXT NOT NULL CHECK (kind IN ('feed', 'pot-on', 'own')),
  day        TEXT NOT NULL,
  -- null: once.
  every_days INTEGER,
  until_day  TEXT,
  text       TEXT NOT NULL,
  removed_at TEXT
) STRICT;
CREATE INDEX own_work_of_plant ON own_work (plant_id);

-- JSON: photographDays, lookOverDays (null: no reminder).
ALTER TABLE plants ADD COLUMN work_rhythm TEXT NOT NULL DEFAULT '{"photographDays":7,"lookOverDays":7}';
