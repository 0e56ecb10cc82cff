-- What the floor has to remember to keep its clocks honest: when heat was lost, and how a jar's first seal check came out.

ALTER TABLE canner_load ADD COLUMN temperature_lost_at INTEGER;
ALTER TABLE canner_load ADD CONSTRAINT canner_load_starts_again_after_a_loss
  CHECK (temperature_lost_at IS NULL OR (temperature_lost_at >= loaded_at AND (at_temperature_at IS NULL OR at_temperature_at >= temperature_lost_at)));

ALTER TABLE jar
  ADD COLUMN seal TEXT,
  ADD COLUMN seal_checked_at INTEGER,
  ADD COLUMN lids_used INTEGER NOT NULL DEFAULT 1,
  ADD CONSTRAINT jar_seal CHECK ((seal IS NULL OR seal IN ('sealed', 'unsealed')) AND (seal IS NULL) = (seal_checked_at IS NULL)),
  ADD CONSTRAINT jar_lids_used CHECK (lids_used BETWEEN 1 AND 9);
