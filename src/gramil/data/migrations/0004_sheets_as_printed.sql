-- The store's form 4: what stood on a sheet when it was handed out, texts and marks, as JSON.
-- Empty on sheets that an older Gramil noted: those are judged by the settings of tools that were noted with them.

ALTER TABLE sheet ADD COLUMN printed TEXT NOT NULL DEFAULT ''
  CONSTRAINT "what stood on a sheet is JSON" CHECK (printed = '' OR json_valid(printed));
