-- The shop's store, form 1. Lengths in mm, masses in g, temperatures in C, moisture and humidity in %.
-- Moments are ISO 8601 texts with their offset from universal time. A text is never NULL: what is not given is empty.
-- `version` is the number of the change that wrote the row last; it is never used again.
-- Names of constraints are the words that the maker reads.

CREATE TABLE change (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  at TEXT NOT NULL,
  who TEXT NOT NULL,
  what TEXT NOT NULL,
  undoes INTEGER UNIQUE REFERENCES change
) STRICT;

-- The change that is being written, within its transaction; empty at all other times.
CREATE TABLE under_way (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  change INTEGER NOT NULL REFERENCES change
) STRICT;

-- What each change did, row by row, so that it can be undone; the rows as they were are in before_... tables.
CREATE TABLE journal (
  step INTEGER PRIMARY KEY AUTOINCREMENT,
  change INTEGER NOT NULL REFERENCES change,
  of_table TEXT NOT NULL,
  did TEXT NOT NULL CHECK (did IN ('insert', 'update', 'delete')),
  row INTEGER NOT NULL
) STRICT;
CREATE INDEX journal_by_change ON journal (change);

CREATE TABLE setting (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  key TEXT NOT NULL UNIQUE CONSTRAINT "a setting has a key" CHECK (key <> ''),
  value TEXT NOT NULL CONSTRAINT "a setting is JSON" CHECK (json_valid(value))
) STRICT;

CREATE TABLE place (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  name TEXT NOT NULL UNIQUE CONSTRAINT "a place has a name" CHECK (name <> ''),
  figures TEXT NOT NULL DEFAULT '{}'
    CONSTRAINT "the figures are a JSON object" CHECK (json_valid(figures) AND json_type(figures) = 'object')
) STRICT;

CREATE TABLE air_import (
  id INTEGER PRIMARY KEY,
  place INTEGER NOT NULL REFERENCES place,
  at TEXT NOT NULL,
  file TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX air_import_by_place ON air_import (place);

-- `instant` is in microseconds since 1970 in universal time, `offset_minutes` what the clock on the wall was ahead of it.
CREATE TABLE air_reading (
  place INTEGER NOT NULL REFERENCES place,
  instant INTEGER NOT NULL,
  offset_minutes INTEGER NOT NULL,
  temperature REAL NOT NULL CONSTRAINT "a room is between -40 and 60 C" CHECK (temperature BETWEEN -40 AND 60),
  humidity REAL NOT NULL CONSTRAINT "relative humidity is between 0 and 100 %" CHECK (humidity BETWEEN 0 AND 100),
  import INTEGER NOT NULL REFERENCES air_import ON DELETE CASCADE,
  PRIMARY KEY (place, instant)
) STRICT, WITHOUT ROWID;
CREATE INDEX air_reading_by_import ON air_reading (import);

CREATE TABLE instrument (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  name TEXT NOT NULL UNIQUE CONSTRAINT "an instrument has a name" CHECK (name <> ''),
  customer TEXT NOT NULL DEFAULT '',
  standing TEXT NOT NULL DEFAULT 'open'
    CONSTRAINT "an instrument is open, waiting or done" CHECK (standing IN ('open', 'waiting', 'done'))
) STRICT;

CREATE TABLE revision (
  id INTEGER PRIMARY KEY,
  instrument INTEGER NOT NULL REFERENCES instrument,
  number INTEGER NOT NULL CONSTRAINT "revisions count from 1" CHECK (number >= 1),
  text TEXT NOT NULL,
  who TEXT NOT NULL DEFAULT '',
  at TEXT NOT NULL,
  why TEXT NOT NULL DEFAULT '',
  UNIQUE (instrument, number)
) STRICT;
CREATE TRIGGER revision_stays BEFORE UPDATE ON revision BEGIN
  SELECT RAISE(ABORT, 'a saved revision stays as it is: save another');
END;

-- A row of the shop's description of any kind ("saw", "jig", "wire", "piece", "wood"); its figures are the other keys of
-- that row as the maker wrote them, bare lengths in the unit of the setting shop.units.
CREATE TABLE item (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  kind TEXT NOT NULL CONSTRAINT "a tool or a wood is of a kind" CHECK (kind <> ''),
  name TEXT NOT NULL CONSTRAINT "a tool or a wood has a name" CHECK (name <> ''),
  figures TEXT NOT NULL DEFAULT '{}'
    CONSTRAINT "the figures are a JSON object" CHECK (json_valid(figures) AND json_type(figures) = 'object'),
  UNIQUE (kind, name)
) STRICT;

CREATE TABLE test_cut (
  id INTEGER PRIMARY KEY,
  tool INTEGER NOT NULL REFERENCES item,
  at TEXT NOT NULL,
  width REAL NOT NULL CONSTRAINT "a cut is wider than 0" CHECK (width > 0),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX test_cut_by_tool ON test_cut (tool);

-- Raw wood, `count` pieces alike of which some may be promised or used; `cost` is of one.
CREATE TABLE blank (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  name TEXT NOT NULL UNIQUE CONSTRAINT "a blank has a name written on it" CHECK (name <> ''),
  wood TEXT NOT NULL,
  length REAL NOT NULL CONSTRAINT "a length is more than 0" CHECK (length > 0),
  width REAL NOT NULL CONSTRAINT "a width is more than 0" CHECK (width > 0),
  thickness REAL NOT NULL CONSTRAINT "a thickness is more than 0" CHECK (thickness > 0),
  count INTEGER NOT NULL DEFAULT 1 CONSTRAINT "a count is not less than 0" CHECK (count >= 0),
  grain TEXT NOT NULL DEFAULT '',
  cost REAL CONSTRAINT "a cost is not less than 0" CHECK (cost >= 0),
  place INTEGER REFERENCES place,
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX blank_by_place ON blank (place);

-- A part made ahead: `kind` such as "bent sides", its figures as written ("scale": "648 mm").
CREATE TABLE part (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  name TEXT NOT NULL UNIQUE CONSTRAINT "a part has a name written on it" CHECK (name <> ''),
  kind TEXT NOT NULL CONSTRAINT "a part is of a kind" CHECK (kind <> ''),
  wood TEXT NOT NULL DEFAULT '',
  figures TEXT NOT NULL DEFAULT '{}'
    CONSTRAINT "the figures are a JSON object" CHECK (json_valid(figures) AND json_type(figures) = 'object'),
  cost REAL CONSTRAINT "a cost is not less than 0" CHECK (cost >= 0),
  place INTEGER REFERENCES place,
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX part_by_place ON part (place);

-- A blank or a part promised to an instrument for a need ("board"), and used when `used_at` is not empty.
CREATE TABLE promise (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  instrument INTEGER NOT NULL REFERENCES instrument,
  need TEXT NOT NULL CONSTRAINT "a promise is for a need" CHECK (need <> ''),
  blank INTEGER REFERENCES blank,
  part INTEGER UNIQUE REFERENCES part,
  count INTEGER NOT NULL DEFAULT 1 CONSTRAINT "at least one is promised" CHECK (count >= 1),
  at TEXT NOT NULL,
  used_at TEXT NOT NULL DEFAULT '',
  CONSTRAINT "a promise is of one blank or one part" CHECK ((blank IS NULL) + (part IS NULL) = 1),
  CONSTRAINT "there is one of each part" CHECK (part IS NULL OR count = 1)
) STRICT;
CREATE INDEX promise_by_blank ON promise (blank);
CREATE INDEX promise_by_instrument ON promise (instrument);
CREATE TRIGGER promise_made_once BEFORE INSERT ON promise
WHEN (SELECT coalesce(sum(count), 0) FROM promise WHERE blank = NEW.blank) + NEW.count
     > (SELECT count FROM blank WHERE id = NEW.blank) BEGIN
  SELECT RAISE(ABORT, 'the blank is promised already, or there are not so many of it');
END;
CREATE TRIGGER promise_kept_once BEFORE UPDATE ON promise
WHEN (SELECT coalesce(sum(count), 0) FROM promise WHERE blank = NEW.blank AND id <> NEW.id) + NEW.count
     > (SELECT count FROM blank WHERE id = NEW.blank) BEGIN
  SELECT RAISE(ABORT, 'the blank is promised already, or there are not so many of it');
END;
CREATE TRIGGER blank_not_fewer_than_promised BEFORE UPDATE OF count ON blank
WHEN NEW.count < (SELECT coalesce(sum(count), 0) FROM promise WHERE blank = NEW.id) BEGIN
  SELECT RAISE(ABORT, 'more of the blank are promised or used than that');
END;

-- A sheet handed out, and the settings of tools that stand on it.
CREATE TABLE sheet (
  id INTEGER PRIMARY KEY,
  instrument INTEGER NOT NULL REFERENCES instrument,
  revision INTEGER NOT NULL,
  title TEXT NOT NULL CONSTRAINT "a sheet has a title" CHECK (title <> ''),
  at TEXT NOT NULL,
  FOREIGN KEY (instrument, revision) REFERENCES revision (instrument, number)
) STRICT;
CREATE INDEX sheet_by_instrument ON sheet (instrument, revision);
CREATE TABLE sheet_setting (
  id INTEGER PRIMARY KEY,
  sheet INTEGER NOT NULL REFERENCES sheet,
  tool INTEGER NOT NULL REFERENCES item,
  name TEXT NOT NULL CONSTRAINT "a setting on a sheet has a name" CHECK (name <> ''),
  value REAL NOT NULL,
  UNIQUE (sheet, tool, name)
) STRICT;
CREATE INDEX sheet_setting_by_tool ON sheet_setting (tool);

CREATE TABLE done (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  instrument INTEGER NOT NULL REFERENCES instrument,
  operation TEXT NOT NULL CONSTRAINT "what is done has a name" CHECK (operation <> ''),
  at TEXT NOT NULL,
  who TEXT NOT NULL DEFAULT '',
  hours REAL CONSTRAINT "hours are not less than 0" CHECK (hours >= 0),
  note TEXT NOT NULL DEFAULT '',
  photos TEXT NOT NULL DEFAULT '[]'
    CONSTRAINT "photos are a JSON list" CHECK (json_valid(photos) AND json_type(photos) = 'array'),
  UNIQUE (instrument, operation)
) STRICT;

-- A figure as measured: as written, and as a number in the unit of its symbol (mm, rad, g ...).
CREATE TABLE measurement (
  id INTEGER PRIMARY KEY,
  instrument INTEGER NOT NULL REFERENCES instrument,
  done INTEGER REFERENCES done,
  address TEXT NOT NULL CONSTRAINT "a measurement is of a figure" CHECK (address <> ''),
  written TEXT NOT NULL,
  value REAL NOT NULL,
  unit TEXT NOT NULL DEFAULT '',
  at TEXT NOT NULL
) STRICT;
CREATE INDEX measurement_by_instrument ON measurement (instrument, address);
CREATE INDEX measurement_by_done ON measurement (done);

-- What an instrument or a part weighed (grams); `what` says which of it ("body, no neck"). Wood is weighed as a "piece".
CREATE TABLE weight (
  id INTEGER PRIMARY KEY,
  instrument INTEGER REFERENCES instrument,
  part INTEGER REFERENCES part,
  what TEXT NOT NULL DEFAULT '',
  grams REAL NOT NULL CONSTRAINT "a weight is more than 0" CHECK (grams > 0),
  at TEXT NOT NULL,
  note TEXT NOT NULL DEFAULT '',
  CONSTRAINT "a weight is of one thing" CHECK ((instrument IS NULL) + (part IS NULL) = 1)
) STRICT;
CREATE INDEX weight_by_instrument ON weight (instrument);
CREATE INDEX weight_by_part ON weight (part);
