-- Glass that food was bought in never goes into a pressure canner, whoever loads it.
CREATE FUNCTION no_shop_jar_under_pressure() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (
    SELECT FROM jar j JOIN supply_lot s ON s.group_id = j.group_id AND s.id = j.jar_lot_id AND s.is_shop_jar
      JOIN canner_load l ON l.group_id = NEW.group_id AND l.id = NEW.load_id
      JOIN canner c ON c.group_id = l.group_id AND c.id = l.canner_id AND c.method = 'pressure'
    WHERE j.group_id = NEW.group_id AND j.id = NEW.jar_id) THEN
    RAISE EXCEPTION 'a shop jar does not go under pressure' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER jar_load_glass BEFORE INSERT ON jar_load FOR EACH ROW EXECUTE FUNCTION no_shop_jar_under_pressure();
