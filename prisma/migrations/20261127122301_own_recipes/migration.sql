-- A group's own recipes. A version is written once and never changed; whoever changes a recipe writes the next one, so that a day keeps
-- the version it was made with. A condition of the published process is confirmed in the words it was shown in, by one person at one time.

CREATE TABLE "own_recipe" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "retired_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "own_recipe_pkey" PRIMARY KEY ("group_id","id")
);

CREATE TABLE "own_recipe_version" (
    "group_id" TEXT NOT NULL,
    "recipe_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "food_id" TEXT,
    "pack" TEXT,
    "method" TEXT,
    "gauge" TEXT,
    "row_key" TEXT,
    "edition" TEXT,
    "written_by" TEXT NOT NULL,
    "written_at" TIMESTAMPTZ(3) NOT NULL,
    CONSTRAINT "own_recipe_version_pkey" PRIMARY KEY ("group_id","recipe_id","number")
);

CREATE TABLE "own_recipe_condition" (
    "group_id" TEXT NOT NULL,
    "recipe_id" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "condition" TEXT NOT NULL,
    "statement" TEXT NOT NULL,
    "edition" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "confirmed_by" TEXT NOT NULL,
    "confirmed_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_by" TEXT,
    "withdrawn_at" TIMESTAMPTZ(3),
    CONSTRAINT "own_recipe_condition_pkey" PRIMARY KEY ("group_id","recipe_id","version","condition","statement","edition")
);

ALTER TABLE "own_recipe" ADD CONSTRAINT "own_recipe_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "own_recipe_version" ADD CONSTRAINT "own_recipe_version_group_id_recipe_id_fkey" FOREIGN KEY ("group_id", "recipe_id") REFERENCES "own_recipe"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "own_recipe_condition" ADD CONSTRAINT "own_recipe_condition_group_id_recipe_id_version_fkey" FOREIGN KEY ("group_id", "recipe_id", "version") REFERENCES "own_recipe_version"("group_id", "recipe_id", "number") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE own_recipe ADD CONSTRAINT own_recipe_version_counts CHECK (version >= 1);
ALTER TABLE own_recipe_version
  ADD CONSTRAINT own_recipe_version_number CHECK (number >= 1),
  ADD CONSTRAINT own_recipe_version_binding CHECK (num_nulls(food_id, pack, method, row_key, edition) IN (0, 5)),
  ADD CONSTRAINT own_recipe_version_pack CHECK (pack IN ('hot', 'raw')),
  ADD CONSTRAINT own_recipe_version_method CHECK (method IN ('boiling-water', 'atmospheric-steam', 'pressure')),
  ADD CONSTRAINT own_recipe_version_gauge CHECK ((method IS NOT DISTINCT FROM 'pressure') = (gauge IS NOT NULL) AND (gauge IS NULL OR gauge IN ('dial', 'weighted')));
ALTER TABLE own_recipe_condition
  ADD CONSTRAINT own_recipe_condition_withdrawn CHECK ((withdrawn_by IS NULL) = (withdrawn_at IS NULL));

REVOKE UPDATE, DELETE, TRUNCATE ON own_recipe_version FROM lidsong_app;
REVOKE DELETE, TRUNCATE ON own_recipe, own_recipe_condition FROM lidsong_app;

-- A preparation may be of a group's own recipe, in one version of it; and it may have no process: then its jars go to the fridge or the
-- freezer, no canner takes them, and nothing about a canner is written.
ALTER TABLE "preparation" ADD COLUMN "own_version" INTEGER;
ALTER TABLE "preparation"
  ALTER COLUMN "method" DROP NOT NULL,
  ALTER COLUMN "process_row_key" DROP NOT NULL,
  ALTER COLUMN "process_edition" DROP NOT NULL,
  ALTER COLUMN "process_minutes" DROP NOT NULL,
  ALTER COLUMN "process_source" DROP NOT NULL;
ALTER TABLE "preparation" ADD CONSTRAINT "preparation_group_id_recipe_id_own_version_fkey" FOREIGN KEY ("group_id", "recipe_id", "own_version") REFERENCES "own_recipe_version"("group_id", "recipe_id", "number") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE preparation
  ADD CONSTRAINT preparation_process_whole_or_none CHECK (num_nulls(method, process_row_key, process_edition, process_minutes, process_source) IN (0, 5)
    AND (method IS NOT NULL OR (gauge IS NULL AND process_psi IS NULL)));

-- No jar of a preparation without a process is ever in a canner, whoever writes the row.
CREATE FUNCTION no_process_no_canner() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
      JOIN preparation p ON p.group_id = b.group_id AND p.id = b.preparation_id
      WHERE j.group_id = NEW.group_id AND j.id = NEW.jar_id AND p.process_row_key IS NULL) THEN
    RAISE EXCEPTION 'a jar without a published process goes into no canner' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER jar_load_has_process BEFORE INSERT ON jar_load FOR EACH ROW EXECUTE FUNCTION no_process_no_canner();
