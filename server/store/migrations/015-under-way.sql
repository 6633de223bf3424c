-- Photos being measured, and how many times the program ended in the midst of it: one that ends it each time must not keep the store shut.
CREATE TABLE under_way (
  view_id TEXT PRIMARY KEY REFERENCES views (id),
  -- Times that measuring was begun since it last came to an end.
  begun   INTEGER NOT NULL CHECK (begun > 0)
) STRICT;
