-- Photos measured by an older method are measured anew behind everything else. One row once there were any.
CREATE TABLE remeasuring (
  id             INTEGER PRIMARY KEY CHECK (id = 1),
  -- The method that they are brought to.
  method_version TEXT NOT NULL,
  -- Photos to be measured anew when this run began; 0 when none is under way.
  total          INTEGER NOT NULL,
  -- 1: the grower has stopped it.
  stopped        INTEGER NOT NULL CHECK (stopped IN (0, 1)),
  -- The sitting whose photos are being measured anew: it is joined once, when all of them are.
  sitting_id     TEXT REFERENCES sittings (id)
) STRICT;
