-- Form 2. Readings of air that were written wrongly: taken out of the air, kept here. Moments of readings as in air_reading.
-- The triggers keep the two in step, so that taking a strike back brings its reading back.

CREATE TABLE air_struck (
  id INTEGER PRIMARY KEY,
  place INTEGER NOT NULL REFERENCES place,
  instant INTEGER NOT NULL,
  offset_minutes INTEGER NOT NULL,
  temperature REAL NOT NULL,
  humidity REAL NOT NULL,
  import INTEGER NOT NULL REFERENCES air_import,
  at TEXT NOT NULL,
  who TEXT NOT NULL DEFAULT '',
  why TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX air_struck_by_place ON air_struck (place, instant);
CREATE INDEX air_struck_by_import ON air_struck (import);
CREATE TRIGGER reading_struck AFTER INSERT ON air_struck BEGIN
  DELETE FROM air_reading WHERE place = NEW.place AND instant = NEW.instant;
END;
CREATE TRIGGER reading_put_back AFTER DELETE ON air_struck BEGIN
  INSERT INTO air_reading VALUES (OLD.place, OLD.instant, OLD.offset_minutes, OLD.temperature, OLD.humidity, OLD.import);
END;
