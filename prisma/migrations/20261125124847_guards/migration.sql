-- What the database refuses by itself, whoever asks: states and kinds outside their lists, more claims than jars,
-- a changed serial or lot number, and any change of history by the app.

ALTER TABLE "group"
  ADD CONSTRAINT group_code_is_short CHECK (code ~ '^[A-HJ-NP-Z]{2,4}$');

ALTER TABLE household
  ADD CONSTRAINT household_headcount_is_real CHECK (headcount BETWEEN 1 AND 50);

ALTER TABLE person
  ADD CONSTRAINT person_role CHECK (role IN ('organiser', 'station-lead', 'operator', 'member', 'helper', 'visitor')),
  ADD CONSTRAINT person_age_class CHECK (age_class IN ('adult', 'teen', 'child'));

ALTER TABLE kitchen
  ADD CONSTRAINT kitchen_elevation CHECK (elevation_feet BETWEEN -1500 AND 20000),
  ADD CONSTRAINT kitchen_hours CHECK (opens_at >= 0 AND closes_at > opens_at AND closes_at <= 2880),
  ADD CONSTRAINT kitchen_headcount CHECK (headcount_limit BETWEEN 1 AND 2000);

ALTER TABLE burner
  ADD CONSTRAINT burner_kind CHECK (kind IN ('gas', 'electric-coil', 'portable-electric', 'induction')),
  ADD CONSTRAINT burner_power_is_known CHECK (btu_per_hour > 0 OR watts > 0);

ALTER TABLE kettle
  ADD CONSTRAINT kettle_volume CHECK (millilitres BETWEEN 250 AND 500000),
  ADD CONSTRAINT kettle_material CHECK (material IN ('stainless', 'enamel', 'aluminium', 'copper', 'cast-iron', 'glass'));

ALTER TABLE canner
  ADD CONSTRAINT canner_method CHECK (method IN ('boiling-water', 'atmospheric-steam', 'pressure')),
  ADD CONSTRAINT canner_gauge CHECK ((method = 'pressure') = (gauge IS NOT NULL) AND (gauge IS NULL OR gauge IN ('dial', 'weighted'))),
  ADD CONSTRAINT canner_capacity CHECK (half_pints >= 0 AND pints >= 0 AND quarts >= 0 AND half_pints + pints + quarts > 0);

ALTER TABLE supply_lot
  ADD CONSTRAINT supply_kind CHECK (kind IN ('jar', 'band', 'lid')),
  ADD CONSTRAINT supply_count CHECK (count >= 0);

ALTER TABLE day
  ADD CONSTRAINT day_state CHECK (state IN ('draft', 'claiming', 'planned', 'running', 'resting', 'closed', 'cancelled')),
  ADD CONSTRAINT day_hours CHECK (access_at <= people_arrive_at AND people_arrive_at <= first_load_at
    AND first_load_at < canners_empty_by AND canners_empty_by <= hard_end AND hard_end <= 2880),
  ADD CONSTRAINT day_spare CHECK (spare_percent BETWEEN 0 AND 100);

ALTER TABLE preparation
  ADD CONSTRAINT preparation_is_never_oversold CHECK (offered >= 0 AND claimed >= 0 AND claimed <= offered),
  ADD CONSTRAINT preparation_minutes CHECK (process_minutes > 0),
  ADD CONSTRAINT preparation_jar_treatment CHECK (jar_treatment IN ('washed-hot', 'boiled-in-pot', 'boiled-in-canners'));

ALTER TABLE claim
  ADD CONSTRAINT claim_is_whole_jars CHECK (jars >= 0);

ALTER TABLE pledge
  ADD CONSTRAINT pledge_kind CHECK (kind IN ('produce', 'jars', 'money', 'hours', 'home-task')),
  ADD CONSTRAINT pledge_quantity CHECK (quantity > 0);

ALTER TABLE purchase
  ADD CONSTRAINT purchase_cost CHECK (cost_minor >= 0);

ALTER TABLE kettle_batch
  ADD CONSTRAINT kettle_batch_state CHECK (state IN ('planned', 'prepping', 'cooking', 'filling', 'filled', 'abandoned')),
  ADD CONSTRAINT kettle_batch_filled CHECK ((state = 'filled') = (jars_filled IS NOT NULL));

ALTER TABLE canner_load
  ADD CONSTRAINT canner_load_state CHECK (state IN ('planned', 'loading', 'coming-up', 'processing', 'cooling-down', 'done', 'failed')),
  ADD CONSTRAINT canner_load_order CHECK ((at_temperature_at IS NULL OR at_temperature_at >= loaded_at)
    AND (processed_at IS NULL OR processed_at >= at_temperature_at + process_minutes)
    AND (emptied_at IS NULL OR emptied_at >= processed_at OR state = 'failed')),
  ADD CONSTRAINT canner_load_done_met_its_process CHECK (state NOT IN ('cooling-down', 'done')
    OR (process_row_key IS NOT NULL AND process_minutes IS NOT NULL AND processed_at IS NOT NULL));

ALTER TABLE jar
  ADD CONSTRAINT jar_state CHECK (state IN ('filled', 'processed', 'sealed', 'unsealed', 'shared-out', 'opened', 'held', 'recalled', 'discarded', 'broken'));

ALTER TABLE award
  ADD CONSTRAINT award_jars CHECK (jars >= 0);

CREATE FUNCTION jar_identity_stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.serial <> OLD.serial OR NEW.short_name <> OLD.short_name OR NEW.batch_id <> OLD.batch_id
     OR (OLD.lot_id IS NOT NULL AND NEW.lot_id IS DISTINCT FROM OLD.lot_id) THEN
    RAISE EXCEPTION 'a jar keeps its serial, its batch and its lot' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER jar_identity BEFORE UPDATE ON jar FOR EACH ROW EXECUTE FUNCTION jar_identity_stays();

CREATE FUNCTION lot_identity_stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a lot never changes' USING ERRCODE = 'check_violation';
END $$;
CREATE TRIGGER lot_identity BEFORE UPDATE ON lot FOR EACH ROW EXECUTE FUNCTION lot_identity_stays();

-- The role the app works as: no owner, no schema changes, and history only grows.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'lidsong_app') THEN
    BEGIN
      CREATE ROLE lidsong_app NOLOGIN;
    EXCEPTION WHEN duplicate_object THEN NULL; -- another database of the same server was first
    END;
  END IF;
  IF NOT pg_has_role(current_user, 'lidsong_app', 'MEMBER') THEN
    EXECUTE format('GRANT lidsong_app TO %I', current_user);
  END IF;
END $$;
GRANT USAGE ON SCHEMA public TO lidsong_app;
GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO lidsong_app;
ALTER DEFAULT PRIVILEGES IN SCHEMA public GRANT SELECT, INSERT, UPDATE, DELETE ON TABLES TO lidsong_app;
REVOKE UPDATE, DELETE, TRUNCATE ON history FROM lidsong_app;
REVOKE DELETE ON jar, lot, jar_load, history_head, kettle_batch, canner_load FROM lidsong_app;
REVOKE UPDATE ON lot, jar_load FROM lidsong_app;
DO $$
BEGIN
  IF to_regclass('_prisma_migrations') IS NOT NULL THEN
    REVOKE INSERT, UPDATE, DELETE ON _prisma_migrations FROM lidsong_app;
  END IF;
END $$;
