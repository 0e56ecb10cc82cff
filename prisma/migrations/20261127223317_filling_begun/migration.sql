-- When the first jar of a batch was filled, where somebody noted it: until then a plan can only guess.
ALTER TABLE "kettle_batch"
  ADD COLUMN "filling_at" INTEGER,
  ADD CONSTRAINT kettle_batch_filling CHECK (state <> 'filling' OR filling_at IS NOT NULL),
  ADD CONSTRAINT kettle_batch_filling_order CHECK (filling_at IS NULL OR (filling_at >= started_at AND (filled_at IS NULL OR filling_at <= filled_at)));
