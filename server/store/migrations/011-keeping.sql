-- Keeping: what every row looked like when it was written, and how backups are made.

-- First half of the SHA-256 of a row's values, in the order of its columns (server/store/row-digests.ts).
CREATE TABLE row_digests (
  table_name TEXT NOT NULL,
  row_id     INTEGER NOT NULL,
  digest     BLOB NOT NULL,
  PRIMARY KEY (table_name, row_id)
) STRICT, WITHOUT ROWID;

-- How the grower wants backups made. One row once it was changed.
CREATE TABLE backup_plan (
  id         INTEGER PRIMARY KEY CHECK (id = 1),
  every_days INTEGER NOT NULL,
  keep_count INTEGER NOT NULL,
  -- null: the folder "backups" in the data home.
  folder     TEXT
) STRICT;

-- What the last look at the whole store found. One row.
CREATE TABLE store_check (
  id         INTEGER PRIMARY KEY CHECK (id = 1),
  checked_at TEXT NOT NULL,
  -- JSON: of, rowCount, photoCount, faults.
  found      TEXT NOT NULL
) STRICT;
