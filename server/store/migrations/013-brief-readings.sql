-- For plants of many years: each photo's newest report without what is drawn and without what only the newest sittings are asked for,
-- so that a plant's whole past is read in a moment; and answers that took long, kept over a restart.

-- JSON of a report whose long lists are empty and whose drawn parts are null; null without a measurement.
ALTER TABLE readings ADD COLUMN brief TEXT;
-- JSON: days that the normal leaf it was judged by was learned from; null: by what is usual.
ALTER TABLE readings ADD COLUMN normal_days TEXT;

UPDATE readings SET (brief, normal_days) = (
  SELECT json_replace(report, '$.unsure', json('[]'), '$.longStems', json('[]'), '$.extras', NULL, '$.axis', NULL, '$.stature', NULL,
      '$.foliage.where', json('[]'), '$.gaps.sectors', json('[]'), '$.flower.patchesMm2', NULL),
    json_extract(normal_leaf, '$.days')
  FROM measurements WHERE measurements.id = measurement_id);

DROP TRIGGER reading_of_measurement;
CREATE TRIGGER reading_of_measurement AFTER INSERT ON measurements BEGIN
  INSERT OR REPLACE INTO readings
    SELECT new.view_id, new.id, new.method_version, json_extract(new.report, '$.status'),
      json_extract(new.report, '$.notCompared'),
      coalesce(json_extract(new.report, '$.flower.share'), json_extract(new.report, '$.canopy.flowerShare')),
      json_extract(new.report, '$.flower.plusMinus'), json_extract(new.report, '$.gaps.tightness'),
      json_extract(new.leaf_look, '$.from'),
      json_replace(new.report, '$.unsure', json('[]'), '$.longStems', json('[]'), '$.extras', NULL, '$.axis', NULL, '$.stature', NULL,
        '$.foliage.where', json('[]'), '$.gaps.sectors', json('[]'), '$.flower.patchesMm2', NULL),
      json_extract(new.normal_leaf, '$.days');
END;

-- Answers of pure functions that take long, as the fit of a bloom: the same question to the same code has the same answer.
CREATE TABLE kept_fits (
  -- SHA-256 of the function's name, its code and the question.
  question TEXT PRIMARY KEY,
  -- JSON.
  answer   TEXT NOT NULL,
  kept_on  TEXT NOT NULL
) STRICT;
