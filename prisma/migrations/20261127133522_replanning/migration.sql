-- Plans made while a day runs: why each was made, what is not as the plan took it to be, tasks fixed by hand, and what each person has seen.

ALTER TABLE plan
  ADD COLUMN made_by TEXT NOT NULL DEFAULT 'plan',
  ADD COLUMN reason TEXT NOT NULL DEFAULT '',
  ADD COLUMN made_at INTEGER,
  ADD COLUMN taken_from INTEGER,
  ADD CONSTRAINT plan_made_by CHECK (made_by IN ('plan', 'replan', 'undo') AND (made_by = 'undo') = (taken_from IS NOT NULL));

CREATE TABLE setback (
  group_id TEXT NOT NULL,
  id TEXT NOT NULL,
  day_id TEXT NOT NULL,
  kind TEXT NOT NULL,
  canner_id TEXT,
  person_id TEXT,
  preparation_id TEXT,
  from_at INTEGER,
  until_at INTEGER,
  batches INTEGER,
  note TEXT NOT NULL DEFAULT '',
  noted_at TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  cleared_at TIMESTAMPTZ(3),
  CONSTRAINT setback_pkey PRIMARY KEY (group_id, id),
  CONSTRAINT setback_group_id_day_id_fkey FOREIGN KEY (group_id, day_id) REFERENCES day (group_id, id) ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT setback_group_id_canner_id_fkey FOREIGN KEY (group_id, canner_id) REFERENCES canner (group_id, id) ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT setback_group_id_person_id_fkey FOREIGN KEY (group_id, person_id) REFERENCES person (group_id, id) ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT setback_group_id_preparation_id_fkey FOREIGN KEY (group_id, preparation_id) REFERENCES preparation (group_id, id) ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT setback_says_what CHECK (CASE kind
    WHEN 'canner-out' THEN canner_id IS NOT NULL AND from_at IS NOT NULL AND (until_at IS NULL OR until_at >= from_at)
    WHEN 'person-away' THEN person_id IS NOT NULL AND from_at IS NOT NULL
    WHEN 'person-late' THEN person_id IS NOT NULL AND from_at IS NOT NULL
    WHEN 'produce-late' THEN preparation_id IS NOT NULL AND from_at IS NOT NULL
    WHEN 'produce-short' THEN preparation_id IS NOT NULL AND batches >= 0
    ELSE FALSE END)
);
CREATE INDEX setback_group_id_day_id_idx ON setback (group_id, day_id);

CREATE TABLE plan_lock (
  group_id TEXT NOT NULL,
  id TEXT NOT NULL,
  day_id TEXT NOT NULL,
  preparation_id TEXT NOT NULL,
  batch INTEGER NOT NULL,
  task TEXT NOT NULL,
  at INTEGER,
  equipment_id TEXT,
  person_id TEXT,
  CONSTRAINT plan_lock_pkey PRIMARY KEY (group_id, id),
  CONSTRAINT plan_lock_group_id_day_id_fkey FOREIGN KEY (group_id, day_id) REFERENCES day (group_id, id) ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT plan_lock_group_id_preparation_id_fkey FOREIGN KEY (group_id, preparation_id) REFERENCES preparation (group_id, id) ON DELETE CASCADE ON UPDATE CASCADE,
  CONSTRAINT plan_lock_group_id_person_id_fkey FOREIGN KEY (group_id, person_id) REFERENCES person (group_id, id) ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT plan_lock_task CHECK (task IN ('load', 'cook', 'fill', 'prep', 'wash') AND batch >= 1),
  CONSTRAINT plan_lock_holds_something CHECK (at IS NOT NULL OR equipment_id IS NOT NULL OR person_id IS NOT NULL)
);
CREATE UNIQUE INDEX plan_lock_group_id_day_id_preparation_id_batch_task_key ON plan_lock (group_id, day_id, preparation_id, batch, task);

CREATE TABLE plan_seen (
  group_id TEXT NOT NULL,
  day_id TEXT NOT NULL,
  person_id TEXT NOT NULL,
  number INTEGER NOT NULL,
  CONSTRAINT plan_seen_pkey PRIMARY KEY (group_id, day_id, person_id),
  CONSTRAINT plan_seen_group_id_day_id_fkey FOREIGN KEY (group_id, day_id) REFERENCES day (group_id, id) ON DELETE RESTRICT ON UPDATE CASCADE,
  CONSTRAINT plan_seen_group_id_person_id_fkey FOREIGN KEY (group_id, person_id) REFERENCES person (group_id, id) ON DELETE RESTRICT ON UPDATE CASCADE
);

GRANT SELECT, INSERT, UPDATE, DELETE ON setback, plan_lock, plan_seen TO lidsong_app;
