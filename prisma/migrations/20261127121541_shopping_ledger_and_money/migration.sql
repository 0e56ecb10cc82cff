-- Shopping list with packs and left-overs, the ledger of jars between households, marks of payments, equipment over its life, hours that count,
-- what becomes of jars nobody fetched, and files that wait to be entered.

ALTER TABLE "award" ADD COLUMN     "extra" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "day" ADD COLUMN     "labour_minutes" INTEGER NOT NULL DEFAULT 240,
ADD COLUMN     "labour_percent" INTEGER NOT NULL DEFAULT 25,
ADD COLUMN     "labour_rate_minor" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "labour_rule" TEXT NOT NULL DEFAULT 'none',
ADD COLUMN     "pick_up_contact" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "pick_up_place" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "pick_up_until" DATE;
ALTER TABLE "jar" ADD COLUMN     "jar_lot_id" TEXT;
ALTER TABLE "purchase" ADD COLUMN     "covers" DECIMAL(14,4),
ADD COLUMN     "covers_unit" TEXT,
ADD COLUMN     "shopping_item" TEXT;
ALTER TABLE "supply_lot" ADD COLUMN     "chipped" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "is_shop_jar" BOOLEAN NOT NULL DEFAULT false;

CREATE TABLE "shopping_pack" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "holds" DECIMAL(14,4) NOT NULL,
    "unit" TEXT NOT NULL,
    "price_minor" INTEGER,
    "is_short" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "shopping_pack_pkey" PRIMARY KEY ("group_id","id")
);

CREATE TABLE "shopping_line" (
    "group_id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "household_id" TEXT,
    "run" TEXT NOT NULL DEFAULT '',
    "pool" TEXT NOT NULL DEFAULT 'common',

    CONSTRAINT "shopping_line_pkey" PRIMARY KEY ("group_id","day_id","item")
);

CREATE TABLE "pantry_lot" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "amount" DECIMAL(14,4) NOT NULL,
    "unit" TEXT NOT NULL,
    "household_id" TEXT,
    "from_day_id" TEXT,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "pantry_lot_pkey" PRIMARY KEY ("group_id","id")
);

CREATE TABLE "jar_movement" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,
    "jar_size" TEXT NOT NULL,
    "mouth" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "jars" INTEGER NOT NULL,
    "day_id" TEXT,
    "moved_on" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "corrects" TEXT,

    CONSTRAINT "jar_movement_pkey" PRIMARY KEY ("group_id","id")
);

CREATE TABLE "closed_count" (
    "group_id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "jar_size" TEXT NOT NULL,
    "came_in" INTEGER NOT NULL,
    "went_out" INTEGER NOT NULL,
    "difference" INTEGER NOT NULL,
    "named" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "closed_count_pkey" PRIMARY KEY ("group_id","day_id","name","jar_size")
);

CREATE TABLE "settlement_mark" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "from_party_id" TEXT NOT NULL,
    "to_party_id" TEXT NOT NULL,
    "amount_minor" INTEGER NOT NULL,
    "side" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "marked_at" TIMESTAMPTZ(3) NOT NULL,
    "undoes" TEXT,

    CONSTRAINT "settlement_mark_pkey" PRIMARY KEY ("group_id","id")
);

CREATE TABLE "equipment_item" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "price_minor" INTEGER NOT NULL,
    "years" INTEGER NOT NULL,
    "days_a_year" INTEGER NOT NULL,
    "household_id" TEXT NOT NULL,

    CONSTRAINT "equipment_item_pkey" PRIMARY KEY ("group_id","id")
);

CREATE TABLE "equipment_charge" (
    "group_id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "equipment_id" TEXT NOT NULL,
    "charge_minor" INTEGER NOT NULL,
    "pool" TEXT NOT NULL DEFAULT 'common',

    CONSTRAINT "equipment_charge_pkey" PRIMARY KEY ("group_id","day_id","equipment_id")
);

CREATE TABLE "hours_worked" (
    "group_id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,
    "minutes" INTEGER NOT NULL,

    CONSTRAINT "hours_worked_pkey" PRIMARY KEY ("group_id","day_id","household_id")
);

CREATE TABLE "own_jar_wish" (
    "group_id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,

    CONSTRAINT "own_jar_wish_pkey" PRIMARY KEY ("group_id","day_id","household_id")
);

CREATE TABLE "import_file" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "day_id" TEXT,
    "name" TEXT NOT NULL,
    "rows" JSONB NOT NULL,
    "problems" JSONB NOT NULL,
    "row_count" INTEGER NOT NULL,
    "read_by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "entered_at" TIMESTAMPTZ(3),

    CONSTRAINT "import_file_pkey" PRIMARY KEY ("group_id","id")
);
CREATE UNIQUE INDEX "shopping_pack_group_id_item_label_key" ON "shopping_pack"("group_id", "item", "label");
CREATE INDEX "jar_movement_group_id_household_id_idx" ON "jar_movement"("group_id", "household_id");
CREATE UNIQUE INDEX "jar_movement_group_id_corrects_key" ON "jar_movement"("group_id", "corrects");
CREATE INDEX "settlement_mark_group_id_day_id_idx" ON "settlement_mark"("group_id", "day_id");
CREATE UNIQUE INDEX "settlement_mark_group_id_undoes_key" ON "settlement_mark"("group_id", "undoes");
CREATE UNIQUE INDEX "equipment_item_group_id_name_key" ON "equipment_item"("group_id", "name");
CREATE INDEX "import_file_group_id_created_at_idx" ON "import_file"("group_id", "created_at");
ALTER TABLE "jar" ADD CONSTRAINT "jar_group_id_jar_lot_id_fkey" FOREIGN KEY ("group_id", "jar_lot_id") REFERENCES "supply_lot"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "shopping_pack" ADD CONSTRAINT "shopping_pack_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "shopping_line" ADD CONSTRAINT "shopping_line_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "shopping_line" ADD CONSTRAINT "shopping_line_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "pantry_lot" ADD CONSTRAINT "pantry_lot_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "pantry_lot" ADD CONSTRAINT "pantry_lot_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "jar_movement" ADD CONSTRAINT "jar_movement_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "jar_movement" ADD CONSTRAINT "jar_movement_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "closed_count" ADD CONSTRAINT "closed_count_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "settlement_mark" ADD CONSTRAINT "settlement_mark_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "equipment_item" ADD CONSTRAINT "equipment_item_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "equipment_item" ADD CONSTRAINT "equipment_item_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "equipment_charge" ADD CONSTRAINT "equipment_charge_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "equipment_charge" ADD CONSTRAINT "equipment_charge_group_id_equipment_id_fkey" FOREIGN KEY ("group_id", "equipment_id") REFERENCES "equipment_item"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "hours_worked" ADD CONSTRAINT "hours_worked_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "hours_worked" ADD CONSTRAINT "hours_worked_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "own_jar_wish" ADD CONSTRAINT "own_jar_wish_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "own_jar_wish" ADD CONSTRAINT "own_jar_wish_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "import_file" ADD CONSTRAINT "import_file_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE award ADD CONSTRAINT award_extra CHECK (extra BETWEEN 0 AND jars);

ALTER TABLE day
  ADD CONSTRAINT day_labour_rule CHECK (labour_rule IN ('none', 'surcharge', 'credit')),
  ADD CONSTRAINT day_labour_figures CHECK (labour_minutes BETWEEN 0 AND 6000 AND labour_percent BETWEEN 0 AND 100 AND labour_rate_minor >= 0);

ALTER TABLE purchase
  ADD CONSTRAINT purchase_covers CHECK ((covers IS NULL) = (covers_unit IS NULL) AND (covers IS NULL OR (covers > 0 AND shopping_item IS NOT NULL)));

ALTER TABLE supply_lot
  ADD CONSTRAINT supply_chipped CHECK (chipped BETWEEN 0 AND count AND (chipped = 0 OR kind = 'jar')),
  ADD CONSTRAINT supply_shop_jar CHECK (kind = 'jar' OR NOT is_shop_jar);

ALTER TABLE shopping_pack ADD CONSTRAINT shopping_pack_figures CHECK (holds > 0 AND (price_minor IS NULL OR price_minor >= 0));

ALTER TABLE pantry_lot ADD CONSTRAINT pantry_amount CHECK (amount > 0);

ALTER TABLE jar_movement
  ADD CONSTRAINT jar_movement_kind CHECK (kind IN ('brought', 'went-back-empty', 'went-home-full', 'came-back-empty', 'broke-here', 'broke-there')),
  ADD CONSTRAINT jar_movement_jars CHECK (jars > 0);
REVOKE UPDATE, DELETE, TRUNCATE ON jar_movement FROM lidsong_app;

-- C1: a sum of the balance is what came in less what went out, and a difference has a name.
ALTER TABLE closed_count
  ADD CONSTRAINT closed_count_adds_up CHECK (came_in >= 0 AND went_out >= 0 AND difference = came_in - went_out),
  ADD CONSTRAINT closed_count_is_named CHECK (difference = 0 OR named <> '');
REVOKE UPDATE, DELETE, TRUNCATE ON closed_count FROM lidsong_app;

-- A day is closed with its balance, and with no jar whose end nobody knows.
CREATE FUNCTION day_closes_with_its_balance() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT FROM jar WHERE group_id = NEW.group_id AND day_id = NEW.id AND state IN ('filled', 'processed')) THEN
    RAISE EXCEPTION 'a day with unchecked jars is not closed' USING ERRCODE = 'check_violation';
  END IF;
  IF NOT EXISTS (SELECT FROM closed_count WHERE group_id = NEW.group_id AND day_id = NEW.id) THEN
    RAISE EXCEPTION 'a day is closed with its balance' USING ERRCODE = 'check_violation';
  END IF;
  IF EXISTS (SELECT FROM (
      SELECT p.jar_size, count(*)::int AS filled FROM jar j
        JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
        JOIN preparation p ON p.group_id = b.group_id AND p.id = b.preparation_id
      WHERE j.group_id = NEW.group_id AND j.day_id = NEW.id GROUP BY 1) AS counted
      LEFT JOIN closed_count c ON c.group_id = NEW.group_id AND c.day_id = NEW.id AND c.name = 'after-the-canner' AND c.jar_size = counted.jar_size
      WHERE c.came_in IS DISTINCT FROM counted.filled) THEN
    RAISE EXCEPTION 'the balance of a day counts every filled jar' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER day_closes BEFORE UPDATE OF state ON day FOR EACH ROW WHEN (NEW.state = 'closed' AND OLD.state <> 'closed')
  EXECUTE FUNCTION day_closes_with_its_balance();

ALTER TABLE settlement_mark
  ADD CONSTRAINT settlement_mark_side CHECK (side IN ('paid', 'received')),
  ADD CONSTRAINT settlement_mark_amount CHECK (amount_minor > 0 AND from_party_id <> to_party_id);
REVOKE UPDATE, DELETE, TRUNCATE ON settlement_mark FROM lidsong_app;

ALTER TABLE equipment_item ADD CONSTRAINT equipment_figures CHECK (price_minor >= 0 AND years BETWEEN 1 AND 100 AND days_a_year BETWEEN 1 AND 366);
ALTER TABLE equipment_charge ADD CONSTRAINT equipment_charge_amount CHECK (charge_minor >= 0);
ALTER TABLE hours_worked ADD CONSTRAINT hours_worked_minutes CHECK (minutes BETWEEN 0 AND 60000);
ALTER TABLE import_file ADD CONSTRAINT import_file_kind CHECK (kind IN ('households', 'equipment', 'supplies', 'deliveries'));
