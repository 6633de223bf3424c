-- When the first cut of a sitting's list was ticked off; photos that came in later show the plant after the work.
ALTER TABLE sittings ADD COLUMN worked_at TEXT;
