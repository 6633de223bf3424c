-- The grower's word on an outline: strokes drawn over the photo, and "the outline is right".
ALTER TABLE views ADD COLUMN strokes TEXT NOT NULL DEFAULT '[]';
ALTER TABLE views ADD COLUMN accepted_at TEXT;
-- 1: waits behind everything that the grower asked for.
ALTER TABLE views ADD COLUMN quiet INTEGER NOT NULL DEFAULT 0;
-- 1: what is known beside the photo is looked up when it is measured next; 0: strokes build on what was used last.
ALTER TABLE views ADD COLUMN look_up INTEGER NOT NULL DEFAULT 1;

-- Outlines of flower, pot, soil and support, photo px.
ALTER TABLE measurements ADD COLUMN parts TEXT NOT NULL DEFAULT '{"flower":[],"pot":[],"soil":[],"support":[]}';
-- Part of every pixel as an 8-bit grey PNG; null when nothing was cut out.
ALTER TABLE measurements ADD COLUMN parts_png BLOB;
-- What was known of the plant: the accepted measurements that taught its colours, oldest first, and the earlier
-- outline with the days since.
ALTER TABLE measurements ADD COLUMN lessons TEXT NOT NULL DEFAULT '[]';
ALTER TABLE measurements ADD COLUMN last_outline INTEGER REFERENCES measurements (id);
ALTER TABLE measurements ADD COLUMN last_outline_days INTEGER;
CREATE INDEX measurements_by_last_outline ON measurements (last_outline);

-- Colours as learned from a list of measurements; each can be learned again.
CREATE TABLE learned_colours (
  lessons TEXT PRIMARY KEY,
  colours BLOB NOT NULL
) STRICT;
