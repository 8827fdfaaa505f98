-- The store's form 6: outlooks of a place's air, kept with the moment at which they were given, so that they count by their
-- age and by what earlier ones were worth. `spells` is a list of [moment by the clock on the wall, temperature C, humidity %].

CREATE TABLE outlook (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  place INTEGER NOT NULL REFERENCES place,
  at TEXT NOT NULL,
  file TEXT NOT NULL DEFAULT '',
  spells TEXT NOT NULL CONSTRAINT "spells are a JSON list" CHECK (json_valid(spells) AND json_type(spells) = 'array')
) STRICT;
CREATE INDEX outlook_by_place ON outlook (place);
