-- The cut list: what ball a plant is cut to, and what the grower does with each cut.

-- JSON: kind even-up; kind width with widthMm; kind show with widestMm.
ALTER TABLE plants ADD COLUMN cut_to TEXT NOT NULL DEFAULT '{"kind":"even-up"}';

-- What the grower did or wrote of one cut. Cuts themselves are made anew from the measurements; the place of the tip finds
-- a cut again whose name has changed because its photos were measured anew.
CREATE TABLE cut_marks (
  sitting_id TEXT NOT NULL REFERENCES sittings (id),
  cut_id     TEXT NOT NULL,
  state      TEXT NOT NULL CHECK (state IN ('open', 'done', 'skipped')),
  chosen     INTEGER NOT NULL CHECK (chosen IN (0, 1)),
  note       TEXT NOT NULL,
  -- JSON: x and y in photo px, or u, v and h in mm.
  tip        TEXT NOT NULL,
  PRIMARY KEY (sitting_id, cut_id)
) STRICT;

-- JSON of the long stems of a turned sitting, and the facts of its joining that they rest on.
CREATE TABLE placed_stems (
  sitting_id TEXT PRIMARY KEY REFERENCES sittings (id),
  facts      TEXT NOT NULL,
  stems      TEXT NOT NULL
) STRICT;
