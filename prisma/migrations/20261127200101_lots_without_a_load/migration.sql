-- Jars without a process have a lot too: all of their kettle batch, and no load. Every other lot names its load, whoever writes the row.
ALTER TABLE "lot" ALTER COLUMN "load_id" DROP NOT NULL;
CREATE UNIQUE INDEX lot_without_a_load_once_a_batch ON lot (group_id, batch_id) WHERE load_id IS NULL;

CREATE FUNCTION lot_fits_its_process() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (NEW.load_id IS NULL) IS DISTINCT FROM (
    SELECT p.process_row_key IS NULL FROM kettle_batch b JOIN preparation p ON p.group_id = b.group_id AND p.id = b.preparation_id
    WHERE b.group_id = NEW.group_id AND b.id = NEW.batch_id) THEN
    RAISE EXCEPTION 'a lot has a canner load exactly where its product has a process' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER lot_load BEFORE INSERT ON lot FOR EACH ROW EXECUTE FUNCTION lot_fits_its_process();
