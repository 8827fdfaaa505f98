-- The store's form 7: pieces that were begun anew, each with how many operations were taken back with it, so that the shop's
-- own share of spoiled work can be told.

CREATE TABLE begun_anew (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  instrument INTEGER NOT NULL REFERENCES instrument,
  piece TEXT NOT NULL CONSTRAINT "a piece has a name" CHECK (piece <> ''),
  operations INTEGER NOT NULL CONSTRAINT "some work was taken back" CHECK (operations > 0),
  at TEXT NOT NULL
) STRICT;
CREATE INDEX begun_anew_by_instrument ON begun_anew (instrument);
