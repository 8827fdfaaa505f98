-- The store's form 3: a maker's own operations, laid over the package's list as the files NAME.operations.toml are.
-- `text` is the list as the maker wrote it; `instrument` is NULL for the list of the whole shop.

CREATE TABLE list_of_operations (
  id INTEGER PRIMARY KEY,
  version INTEGER NOT NULL,
  instrument INTEGER UNIQUE REFERENCES instrument,
  text TEXT NOT NULL CONSTRAINT "a list of operations is not empty" CHECK (text <> '')
) STRICT;
CREATE TRIGGER list_of_the_shop_once BEFORE INSERT ON list_of_operations
WHEN NEW.instrument IS NULL AND EXISTS (SELECT 1 FROM list_of_operations WHERE instrument IS NULL) BEGIN
  SELECT RAISE(ABORT, 'there is a list of operations of the shop already');
END;
