-- Rest for people, in minutes: a break for whoever is there longer, and the longest work on end. No break minutes: none are planned.
ALTER TABLE "day"
  ADD COLUMN "break_minutes" INTEGER NOT NULL DEFAULT 30,
  ADD COLUMN "break_after_minutes" INTEGER NOT NULL DEFAULT 360,
  ADD COLUMN "longest_stretch_minutes" INTEGER NOT NULL DEFAULT 300,
  ADD CONSTRAINT day_break_minutes CHECK (break_minutes BETWEEN 0 AND 120),
  ADD CONSTRAINT day_break_after_minutes CHECK (break_after_minutes BETWEEN 60 AND 1440),
  ADD CONSTRAINT day_longest_stretch_minutes CHECK (longest_stretch_minutes BETWEEN 60 AND 1440);
