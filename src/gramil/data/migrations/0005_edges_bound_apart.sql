-- The store's form 5: the back's binding and the top's are two operations, where binding the body had been one.
-- What was noted as that one is both: the hours and the measurements stay with the back, which is bound first.

INSERT OR IGNORE INTO done (version, instrument, operation, at, who, note, photos)
  SELECT version, instrument, 'top_bound', at, who, note, photos FROM done WHERE operation = 'body_bound';
UPDATE OR IGNORE done SET operation = 'back_bound' WHERE operation = 'body_bound';
