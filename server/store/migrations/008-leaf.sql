-- Leaf and bloom: what each photo's leaf looks like, what is normal for a plant, what was said of offered dates.

-- JSON: the leaf's look in this photo, to learn a normal from; null when nothing was measured or white is not known.
ALTER TABLE measurements ADD COLUMN leaf_look TEXT;
-- JSON: the plant's normal leaf that it was judged by, and the days it was learned from; null: by what is usual.
ALTER TABLE measurements ADD COLUMN normal_leaf TEXT;

-- Days on which the grower called the plant's leaf healthy; they go before its first sittings.
CREATE TABLE healthy_days (
  plant_id TEXT NOT NULL REFERENCES plants (id),
  day      TEXT NOT NULL,
  PRIMARY KEY (plant_id, day)
) STRICT;

-- What the grower said last of a date of the bloom that was offered for the log.
CREATE TABLE bloom_words (
  plant_id TEXT NOT NULL REFERENCES plants (id),
  event    TEXT NOT NULL CHECK (event IN ('first-colour', 'full-bloom')),
  said     TEXT NOT NULL CHECK (said IN ('yes', 'no')),
  -- As it was offered.
  day      TEXT NOT NULL,
  -- The entry it became; null after a no.
  note_id  TEXT REFERENCES notes (id),
  -- Where an entry of an earlier yes stood before it was moved; null when it was added.
  moved_from TEXT,
  PRIMARY KEY (plant_id, event)
) STRICT;
