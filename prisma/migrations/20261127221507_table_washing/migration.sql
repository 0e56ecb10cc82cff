-- Minutes to wash a fill table between food with an allergen and food without it. 0: not planned.
ALTER TABLE "day"
  ADD COLUMN "table_wash_minutes" INTEGER NOT NULL DEFAULT 0,
  ADD CONSTRAINT day_table_wash_minutes CHECK (table_wash_minutes BETWEEN 0 AND 120);
