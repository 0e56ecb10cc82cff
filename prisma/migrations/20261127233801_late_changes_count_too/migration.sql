-- A claim that was sent in one minute and counted in the next counts in the minute that has begun, as lib/services/count-in-window.ts counts
-- every other change: before, it started the count anew, and up to twice the allowed number got through at the turn of a minute.
CREATE OR REPLACE FUNCTION claim_the_short_way(
  tap_key text, tap_hash text, asker text, asker_version integer, roles_for_any text[], roles_for_own text[],
  minute_start timestamptz, most_a_minute integer,
  of_group text, of_preparation text, of_household text, asked integer, new_claim text, plain_recipes text[], at text,
  OUT reply jsonb, OUT of_day text
) LANGUAGE plpgsql AS $$
DECLARE
  asker_name text;
  held record;
  offer record;
  head record;
  before integer := 0;
  claim_id text;
  entry_number bigint;
  entry_hash text;
  taps integer;
BEGIN
  SELECT p.name INTO asker_name FROM person p JOIN "user" u ON u.id = p.user_id
  WHERE p.group_id = of_group AND p.user_id = asker AND p.active AND u.session_version = asker_version
    AND (p.role = ANY (roles_for_any) OR (p.role = ANY (roles_for_own) AND p.household_id = of_household));
  IF NOT FOUND THEN RETURN; END IF;

  SELECT p.day_id INTO of_day
  FROM preparation p
  JOIN day d ON d.group_id = p.group_id AND d.id = p.day_id
  JOIN household h ON h.group_id = p.group_id AND h.id = of_household
  LEFT JOIN claim c ON c.group_id = p.group_id AND c.preparation_id = p.id AND c.household_id = h.id
  WHERE p.group_id = of_group AND p.id = of_preparation AND d.state = 'claiming' AND d.household_cap IS NULL AND h.left_at IS NULL
    AND (d.claims_open_at IS NULL OR d.claims_open_at <= at::timestamptz) AND (d.claims_close_at IS NULL OR d.claims_close_at >= at::timestamptz)
    AND p.waiting = 0 AND (p.household_cap IS NULL OR asked <= p.household_cap) AND p.claimed - coalesce(c.jars, 0) + asked <= p.offered
    AND (p.recipe_id = ANY (plain_recipes) OR (coalesce(cardinality(h.allergens), 0) = 0 AND NOT EXISTS (
      SELECT FROM person m WHERE m.group_id = of_group AND m.household_id = of_household AND m.active AND cardinality(m.allergies) > 0)));
  IF NOT FOUND THEN RETURN; END IF;

  INSERT INTO idempotent_request (key, actor_id, command, body_hash) VALUES (tap_key, asker, 'claim-jars', tap_hash)
  ON CONFLICT (key) DO NOTHING;
  IF NOT FOUND THEN RETURN; END IF;

  PERFORM FROM day d JOIN household h ON h.group_id = d.group_id AND h.id = of_household
  WHERE d.group_id = of_group AND d.id = of_day AND d.state = 'claiming' AND d.household_cap IS NULL AND h.left_at IS NULL
    AND (d.claims_open_at IS NULL OR d.claims_open_at <= at::timestamptz) AND (d.claims_close_at IS NULL OR d.claims_close_at >= at::timestamptz)
  FOR SHARE OF d FOR NO KEY UPDATE OF h;
  IF NOT FOUND THEN RAISE EXCEPTION 'the long way' USING ERRCODE = 'LS001'; END IF;

  INSERT INTO rate_window (key, starts_at, count) VALUES ('changes:' || asker, minute_start, 1)
  ON CONFLICT (key) DO UPDATE SET
    count = CASE WHEN rate_window.starts_at IN (EXCLUDED.starts_at, EXCLUDED.starts_at + interval '1 minute') THEN rate_window.count + 1 ELSE 1 END,
    starts_at = CASE WHEN rate_window.starts_at = EXCLUDED.starts_at + interval '1 minute' THEN rate_window.starts_at ELSE EXCLUDED.starts_at END
  RETURNING count INTO taps;
  IF taps > most_a_minute THEN RAISE EXCEPTION 'the long way' USING ERRCODE = 'LS001'; END IF;

  -- From here to the end whoever asks for the same jars waits.
  PERFORM FROM preparation WHERE group_id = of_group AND id = of_preparation FOR NO KEY UPDATE;
  SELECT id, jars INTO held FROM claim WHERE group_id = of_group AND preparation_id = of_preparation AND household_id = of_household;
  IF FOUND THEN before := held.jars; END IF;
  UPDATE preparation SET claimed = claimed - before + asked
  WHERE group_id = of_group AND id = of_preparation AND claimed - before + asked <= offered
    AND waiting = 0 AND (household_cap IS NULL OR asked <= household_cap)
  RETURNING offered, claimed INTO offer;
  IF NOT FOUND THEN RAISE EXCEPTION 'the long way' USING ERRCODE = 'LS001'; END IF;

  IF held.id IS NULL THEN
    claim_id := new_claim;
    INSERT INTO claim (group_id, id, preparation_id, household_id, jars) VALUES (of_group, claim_id, of_preparation, of_household, asked);
  ELSE
    claim_id := held.id;
    UPDATE claim SET jars = asked, updated_at = now() WHERE group_id = of_group AND id = claim_id;
  END IF;

  SELECT number, hash INTO head FROM history_head WHERE group_id = of_group FOR NO KEY UPDATE;
  IF NOT FOUND THEN RAISE EXCEPTION 'the long way' USING ERRCODE = 'LS001'; END IF;
  entry_number := head.number + 1;
  -- The entry in canonical JSON, as lib/commands/canonical-json.ts writes it: to_json quotes a text as JSON.stringify does.
  entry_hash := encode(sha256(convert_to(head.hash || '{"actorId":' || to_json(asker) || ',"actorName":' || to_json(asker_name)
    || ',"command":"claim-jars","dayId":' || to_json(of_day) || ',"detail":{"before":' || before || ',"householdId":' || to_json(of_household)
    || ',"jars":' || asked || ',"preparationId":' || to_json(of_preparation) || '},"groupId":' || to_json(of_group)
    || ',"number":"' || entry_number || '","recordedAt":' || to_json(at) || ',"subject":' || to_json('claim ' || claim_id) || '}', 'UTF8')), 'hex');
  INSERT INTO history (group_id, number, day_id, command, subject, detail, actor_id, actor_name, recorded_at, previous_hash, hash)
  VALUES (of_group, entry_number, of_day, 'claim-jars', 'claim ' || claim_id,
    jsonb_build_object('preparationId', of_preparation, 'householdId', of_household, 'jars', asked, 'before', before),
    asker, asker_name, at::timestamptz, head.hash, entry_hash);
  UPDATE history_head SET number = entry_number, hash = entry_hash WHERE group_id = of_group;

  reply := jsonb_build_object('claimId', claim_id, 'preparationId', of_preparation, 'householdId', of_household, 'jars', asked,
    'offered', offer.offered, 'claimed', offer.claimed);
  UPDATE idempotent_request r SET reply = claim_the_short_way.reply WHERE r.key = tap_key;
END $$;
