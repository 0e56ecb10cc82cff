-- Jars to put up beyond what is claimed, and a second plan of the same day: batches and loads that a new plan leaves out
-- go, as long as nothing has happened to them. The plan that named them stays in "plan", and the change in "history".

ALTER TABLE preparation ADD COLUMN spare_jars INTEGER NOT NULL DEFAULT 0;
ALTER TABLE preparation ADD CONSTRAINT preparation_spare CHECK (spare_jars BETWEEN 0 AND 500);

CREATE FUNCTION only_planned_work_goes() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.state <> 'planned' THEN
    RAISE EXCEPTION 'work that has begun stays on record' USING ERRCODE = 'check_violation';
  END IF;
  RETURN OLD;
END $$;
CREATE TRIGGER kettle_batch_stays BEFORE DELETE ON kettle_batch FOR EACH ROW EXECUTE FUNCTION only_planned_work_goes();
CREATE TRIGGER canner_load_stays BEFORE DELETE ON canner_load FOR EACH ROW EXECUTE FUNCTION only_planned_work_goes();
GRANT DELETE ON kettle_batch, canner_load TO lidsong_app;
