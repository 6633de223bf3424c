-- What is asked of every photo of a plant, answered by indexes alone: the rows of readings are long, and those of a plant lie scattered
-- over the file.
DROP INDEX views_of_sitting;
CREATE INDEX views_of_sitting ON views (sitting_id, removed_at, received_at, id);
CREATE INDEX readings_of_flower ON readings (view_id, status, flower_share, flower_plus_minus);
