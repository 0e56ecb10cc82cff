-- One search for a day's timetable that may go on for minutes, in a thread of its own: what is searched for, how far it has come, and the
-- best plan so far, whole. The queue that runs it is a schema of its own, made beside the migrations by the owner.

CREATE TABLE "plan_search" (
  "group_id" TEXT NOT NULL,
  "id" TEXT NOT NULL,
  "day_id" TEXT NOT NULL,
  "asked_by" TEXT NOT NULL,
  "change" TEXT,
  "seed" INTEGER NOT NULL DEFAULT 0,
  "problem" JSONB NOT NULL,
  "problem_hash" TEXT NOT NULL,
  "batches" INTEGER NOT NULL,
  "loads" INTEGER NOT NULL,
  "state" TEXT NOT NULL DEFAULT 'queued',
  "runner" TEXT,
  "tries" INTEGER NOT NULL DEFAULT 0,
  "is_complete" BOOLEAN NOT NULL DEFAULT false,
  "steps" INTEGER NOT NULL DEFAULT 0,
  "finish_at" INTEGER,
  "lower_bound" INTEGER,
  "trail" JSONB NOT NULL DEFAULT '[]',
  "plan" JSONB,
  "said" JSONB,
  "taken_as" INTEGER,
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  "started_at" TIMESTAMPTZ(3),
  "alive_at" TIMESTAMPTZ(3),
  "ended_at" TIMESTAMPTZ(3),

  CONSTRAINT "plan_search_pkey" PRIMARY KEY ("group_id", "id"),
  CONSTRAINT plan_search_state CHECK (state IN ('queued', 'running', 'stopped', 'done', 'failed')),
  CONSTRAINT plan_search_ended CHECK ((state IN ('queued', 'running')) = (ended_at IS NULL)),
  CONSTRAINT plan_search_runs_somewhere CHECK ((state = 'running') = (runner IS NOT NULL)),
  CONSTRAINT plan_search_best_is_whole CHECK ((plan IS NULL) = (finish_at IS NULL)),
  CONSTRAINT plan_search_keeps_its_bound CHECK (finish_at >= lower_bound)
);
CREATE INDEX "plan_search_group_id_day_id_created_at_idx" ON "plan_search" ("group_id", "day_id", "created_at");
ALTER TABLE "plan_search" ADD CONSTRAINT "plan_search_group_id_day_id_fkey"
  FOREIGN KEY ("group_id", "day_id") REFERENCES "day" ("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- However many ask at once, a day is searched once.
CREATE UNIQUE INDEX plan_search_once_a_day ON plan_search (group_id, day_id) WHERE state IN ('queued', 'running');
