-- CreateTable
CREATE TABLE "user" (
    "id" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" TIMESTAMPTZ(3),
    "name" TEXT,
    "image" TEXT,
    "password_hash" TEXT,
    "session_version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "user_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verification_token" (
    "identifier" TEXT NOT NULL,
    "token" TEXT NOT NULL,
    "expires" TIMESTAMPTZ(3) NOT NULL
);

-- CreateTable
CREATE TABLE "group" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "currency" TEXT NOT NULL DEFAULT 'USD',
    "ask_line" TEXT NOT NULL,
    "is_demo" BOOLEAN NOT NULL DEFAULT false,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "group_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "household" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "headcount" INTEGER NOT NULL DEFAULT 1,
    "language" TEXT NOT NULL DEFAULT 'en',
    "contact" TEXT NOT NULL DEFAULT '',
    "allergens" TEXT[],
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "household_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "person" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,
    "user_id" TEXT,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "age_class" TEXT NOT NULL DEFAULT 'adult',
    "skills" TEXT[],
    "limits" TEXT[],
    "allergies" TEXT[],
    "languages" TEXT[],
    "available_from" INTEGER,
    "available_until" INTEGER,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "person_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "invite" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "household_id" TEXT,
    "email" TEXT,
    "created_by" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "invite_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "kitchen" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "elevation_feet" INTEGER NOT NULL,
    "elevation_source" TEXT NOT NULL,
    "opens_at" INTEGER NOT NULL,
    "closes_at" INTEGER NOT NULL,
    "headcount_limit" INTEGER NOT NULL,
    "rack_jars" INTEGER NOT NULL,
    "fridges" INTEGER NOT NULL DEFAULT 0,
    "sinks" INTEGER NOT NULL DEFAULT 1,
    "fill_tables" INTEGER NOT NULL DEFAULT 1,
    "notes" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "kitchen_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "burner" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kitchen_id" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "btu_per_hour" INTEGER,
    "watts" INTEGER,
    "circuit" TEXT NOT NULL DEFAULT '',
    "kept_for" TEXT[],
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "burner_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "kettle" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kitchen_id" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "millilitres" INTEGER NOT NULL,
    "material" TEXT NOT NULL,
    "kept_for" TEXT NOT NULL,

    CONSTRAINT "kettle_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "canner" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kitchen_id" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "gauge" TEXT,
    "gauge_tested_on" DATE,
    "gauge_error_psi" DOUBLE PRECISION,
    "half_pints" INTEGER NOT NULL DEFAULT 0,
    "pints" INTEGER NOT NULL DEFAULT 0,
    "quarts" INTEGER NOT NULL DEFAULT 0,
    "out_of_use" TEXT,

    CONSTRAINT "canner_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "supply_lot" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "jar_size" TEXT,
    "mouth" TEXT NOT NULL DEFAULT 'regular',
    "lot_code" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "bought_on" DATE,
    "household_id" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "supply_lot_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "day" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kitchen_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "date" DATE NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'draft',
    "version" INTEGER NOT NULL DEFAULT 1,
    "access_at" INTEGER NOT NULL,
    "people_arrive_at" INTEGER NOT NULL,
    "briefing_minutes" INTEGER NOT NULL,
    "first_load_at" INTEGER NOT NULL,
    "canners_empty_by" INTEGER NOT NULL,
    "clean_up_minutes" INTEGER NOT NULL,
    "hard_end" INTEGER NOT NULL,
    "share_rule" TEXT NOT NULL DEFAULT 'in-proportion',
    "spare_percent" INTEGER NOT NULL DEFAULT 10,
    "claims_close_at" TIMESTAMPTZ(3),
    "lid_lot_id" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "day_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "preparation" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "recipe_id" TEXT NOT NULL,
    "letter" TEXT NOT NULL,
    "jar_size" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "gauge" TEXT,
    "process_row_key" TEXT NOT NULL,
    "process_edition" TEXT NOT NULL,
    "process_minutes" INTEGER NOT NULL,
    "process_psi" INTEGER,
    "process_source" TEXT NOT NULL,
    "jar_treatment" TEXT NOT NULL,
    "offered" INTEGER NOT NULL,
    "claimed" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "preparation_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "claim" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "preparation_id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,
    "jars" INTEGER NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "claim_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "pledge" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,
    "person_id" TEXT,
    "kind" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "quantity" DECIMAL(12,3) NOT NULL,
    "unit" TEXT NOT NULL,
    "credit_minor" INTEGER,
    "pool" TEXT NOT NULL DEFAULT 'common',
    "note" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "pledge_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "ingredient_lot" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "quantity" DECIMAL(12,3) NOT NULL,
    "unit" TEXT NOT NULL,
    "household_id" TEXT,
    "source" TEXT NOT NULL DEFAULT '',
    "condition" TEXT NOT NULL DEFAULT '',
    "received_on" DATE NOT NULL,
    "allergens" TEXT[],

    CONSTRAINT "ingredient_lot_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "purchase" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "packs" DECIMAL(12,3) NOT NULL,
    "pack" TEXT NOT NULL,
    "cost_minor" INTEGER NOT NULL,
    "household_id" TEXT NOT NULL,
    "pool" TEXT NOT NULL,

    CONSTRAINT "purchase_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "plan" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "problem" JSONB NOT NULL,
    "plan" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "plan_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "kettle_batch" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "preparation_id" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "kettle_id" TEXT,
    "planned_start" INTEGER NOT NULL,
    "planned_filled" INTEGER NOT NULL,
    "planned_jars" INTEGER NOT NULL,
    "started_at" INTEGER,
    "filled_at" INTEGER,
    "jars_filled" INTEGER,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "kettle_batch_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "batch_ingredient" (
    "group_id" TEXT NOT NULL,
    "batch_id" TEXT NOT NULL,
    "lot_id" TEXT NOT NULL,

    CONSTRAINT "batch_ingredient_pkey" PRIMARY KEY ("group_id","batch_id","lot_id")
);

-- CreateTable
CREATE TABLE "canner_load" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "canner_id" TEXT NOT NULL,
    "operator_id" TEXT,
    "planned_load_at" INTEGER NOT NULL,
    "planned_empty_at" INTEGER NOT NULL,
    "process_row_key" TEXT,
    "process_edition" TEXT,
    "process_minutes" INTEGER,
    "process_psi" INTEGER,
    "process_source" TEXT,
    "loaded_at" INTEGER,
    "at_temperature_at" INTEGER,
    "processed_at" INTEGER,
    "emptied_at" INTEGER,
    "restarts" INTEGER NOT NULL DEFAULT 0,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "canner_load_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "lot" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "lot_number" TEXT NOT NULL,
    "batch_id" TEXT NOT NULL,
    "load_id" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "lot_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "jar" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "serial" TEXT NOT NULL,
    "short_name" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "batch_id" TEXT NOT NULL,
    "lot_id" TEXT,
    "state" TEXT NOT NULL DEFAULT 'filled',
    "filled_at" INTEGER NOT NULL,
    "lid_lot_id" TEXT,
    "household_id" TEXT,
    "where_now" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "jar_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "jar_load" (
    "group_id" TEXT NOT NULL,
    "jar_id" TEXT NOT NULL,
    "load_id" TEXT NOT NULL,
    "turn" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "jar_load_pkey" PRIMARY KEY ("group_id","jar_id","load_id")
);

-- CreateTable
CREATE TABLE "award" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "preparation_id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,
    "asked" INTEGER NOT NULL,
    "jars" INTEGER NOT NULL,
    "quota" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "handed_over_at" TIMESTAMPTZ(3),

    CONSTRAINT "award_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "incident" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "what" TEXT NOT NULL,
    "action" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "incident_pkey" PRIMARY KEY ("group_id","id")
);

-- CreateTable
CREATE TABLE "history" (
    "group_id" TEXT NOT NULL,
    "number" BIGINT NOT NULL,
    "day_id" TEXT,
    "command" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "detail" JSONB NOT NULL,
    "actor_id" TEXT NOT NULL,
    "actor_name" TEXT NOT NULL,
    "client_time" TIMESTAMPTZ(3),
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "previous_hash" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "history_pkey" PRIMARY KEY ("group_id","number")
);

-- CreateTable
CREATE TABLE "history_head" (
    "group_id" TEXT NOT NULL,
    "number" BIGINT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "history_head_pkey" PRIMARY KEY ("group_id")
);

-- CreateTable
CREATE TABLE "idempotent_request" (
    "key" TEXT NOT NULL,
    "actor_id" TEXT NOT NULL,
    "command" TEXT NOT NULL,
    "body_hash" TEXT NOT NULL,
    "reply" JSONB,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "idempotent_request_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "outgoing_mail" (
    "id" TEXT NOT NULL,
    "group_id" TEXT,
    "to" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "sent_at" TIMESTAMPTZ(3),
    "tries" INTEGER NOT NULL DEFAULT 0,
    "last_error" TEXT,

    CONSTRAINT "outgoing_mail_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_window" (
    "key" TEXT NOT NULL,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "count" INTEGER NOT NULL,

    CONSTRAINT "rate_window_pkey" PRIMARY KEY ("key")
);

-- CreateIndex
CREATE UNIQUE INDEX "user_email_key" ON "user"("email");

-- CreateIndex
CREATE UNIQUE INDEX "verification_token_token_key" ON "verification_token"("token");

-- CreateIndex
CREATE UNIQUE INDEX "verification_token_identifier_token_key" ON "verification_token"("identifier", "token");

-- CreateIndex
CREATE UNIQUE INDEX "household_group_id_name_key" ON "household"("group_id", "name");

-- CreateIndex
CREATE INDEX "person_group_id_household_id_idx" ON "person"("group_id", "household_id");

-- CreateIndex
CREATE INDEX "person_user_id_idx" ON "person"("user_id");

-- CreateIndex
CREATE UNIQUE INDEX "person_group_id_user_id_key" ON "person"("group_id", "user_id");

-- CreateIndex
CREATE UNIQUE INDEX "invite_token_hash_key" ON "invite"("token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "kitchen_group_id_name_key" ON "kitchen"("group_id", "name");

-- CreateIndex
CREATE UNIQUE INDEX "burner_group_id_kitchen_id_label_key" ON "burner"("group_id", "kitchen_id", "label");

-- CreateIndex
CREATE UNIQUE INDEX "kettle_group_id_kitchen_id_label_key" ON "kettle"("group_id", "kitchen_id", "label");

-- CreateIndex
CREATE UNIQUE INDEX "canner_group_id_kitchen_id_label_key" ON "canner"("group_id", "kitchen_id", "label");

-- CreateIndex
CREATE UNIQUE INDEX "supply_lot_group_id_kind_lot_code_key" ON "supply_lot"("group_id", "kind", "lot_code");

-- CreateIndex
CREATE INDEX "day_group_id_date_idx" ON "day"("group_id", "date");

-- CreateIndex
CREATE UNIQUE INDEX "preparation_group_id_day_id_letter_key" ON "preparation"("group_id", "day_id", "letter");

-- CreateIndex
CREATE INDEX "claim_group_id_household_id_idx" ON "claim"("group_id", "household_id");

-- CreateIndex
CREATE UNIQUE INDEX "claim_group_id_preparation_id_household_id_key" ON "claim"("group_id", "preparation_id", "household_id");

-- CreateIndex
CREATE INDEX "pledge_group_id_day_id_idx" ON "pledge"("group_id", "day_id");

-- CreateIndex
CREATE UNIQUE INDEX "ingredient_lot_group_id_day_id_code_key" ON "ingredient_lot"("group_id", "day_id", "code");

-- CreateIndex
CREATE INDEX "purchase_group_id_day_id_idx" ON "purchase"("group_id", "day_id");

-- CreateIndex
CREATE UNIQUE INDEX "plan_group_id_day_id_number_key" ON "plan"("group_id", "day_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "kettle_batch_group_id_day_id_code_key" ON "kettle_batch"("group_id", "day_id", "code");

-- CreateIndex
CREATE INDEX "batch_ingredient_group_id_lot_id_batch_id_idx" ON "batch_ingredient"("group_id", "lot_id", "batch_id");

-- CreateIndex
CREATE INDEX "canner_load_group_id_canner_id_idx" ON "canner_load"("group_id", "canner_id");

-- CreateIndex
CREATE UNIQUE INDEX "canner_load_group_id_day_id_code_key" ON "canner_load"("group_id", "day_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "lot_lot_number_key" ON "lot"("lot_number");

-- CreateIndex
CREATE INDEX "lot_group_id_load_id_idx" ON "lot"("group_id", "load_id");

-- CreateIndex
CREATE UNIQUE INDEX "lot_group_id_batch_id_load_id_key" ON "lot"("group_id", "batch_id", "load_id");

-- CreateIndex
CREATE UNIQUE INDEX "jar_serial_key" ON "jar"("serial");

-- CreateIndex
CREATE INDEX "jar_group_id_batch_id_idx" ON "jar"("group_id", "batch_id");

-- CreateIndex
CREATE INDEX "jar_group_id_lot_id_idx" ON "jar"("group_id", "lot_id");

-- CreateIndex
CREATE INDEX "jar_group_id_household_id_idx" ON "jar"("group_id", "household_id");

-- CreateIndex
CREATE UNIQUE INDEX "jar_group_id_day_id_short_name_key" ON "jar"("group_id", "day_id", "short_name");

-- CreateIndex
CREATE INDEX "jar_load_group_id_load_id_jar_id_idx" ON "jar_load"("group_id", "load_id", "jar_id");

-- CreateIndex
CREATE UNIQUE INDEX "award_group_id_preparation_id_household_id_key" ON "award"("group_id", "preparation_id", "household_id");

-- CreateIndex
CREATE INDEX "incident_group_id_day_id_idx" ON "incident"("group_id", "day_id");

-- CreateIndex
CREATE INDEX "history_group_id_day_id_number_idx" ON "history"("group_id", "day_id", "number");

-- CreateIndex
CREATE INDEX "idempotent_request_created_at_idx" ON "idempotent_request"("created_at");

-- CreateIndex
CREATE INDEX "outgoing_mail_sent_at_created_at_idx" ON "outgoing_mail"("sent_at", "created_at");

-- CreateIndex
CREATE INDEX "rate_window_starts_at_idx" ON "rate_window"("starts_at");

-- AddForeignKey
ALTER TABLE "household" ADD CONSTRAINT "household_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invite" ADD CONSTRAINT "invite_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invite" ADD CONSTRAINT "invite_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kitchen" ADD CONSTRAINT "kitchen_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "burner" ADD CONSTRAINT "burner_group_id_kitchen_id_fkey" FOREIGN KEY ("group_id", "kitchen_id") REFERENCES "kitchen"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kettle" ADD CONSTRAINT "kettle_group_id_kitchen_id_fkey" FOREIGN KEY ("group_id", "kitchen_id") REFERENCES "kitchen"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "canner" ADD CONSTRAINT "canner_group_id_kitchen_id_fkey" FOREIGN KEY ("group_id", "kitchen_id") REFERENCES "kitchen"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supply_lot" ADD CONSTRAINT "supply_lot_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supply_lot" ADD CONSTRAINT "supply_lot_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "day" ADD CONSTRAINT "day_group_id_fkey" FOREIGN KEY ("group_id") REFERENCES "group"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "day" ADD CONSTRAINT "day_group_id_kitchen_id_fkey" FOREIGN KEY ("group_id", "kitchen_id") REFERENCES "kitchen"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "preparation" ADD CONSTRAINT "preparation_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claim" ADD CONSTRAINT "claim_group_id_preparation_id_fkey" FOREIGN KEY ("group_id", "preparation_id") REFERENCES "preparation"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claim" ADD CONSTRAINT "claim_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pledge" ADD CONSTRAINT "pledge_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pledge" ADD CONSTRAINT "pledge_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ingredient_lot" ADD CONSTRAINT "ingredient_lot_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ingredient_lot" ADD CONSTRAINT "ingredient_lot_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "purchase" ADD CONSTRAINT "purchase_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "purchase" ADD CONSTRAINT "purchase_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan" ADD CONSTRAINT "plan_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kettle_batch" ADD CONSTRAINT "kettle_batch_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kettle_batch" ADD CONSTRAINT "kettle_batch_group_id_preparation_id_fkey" FOREIGN KEY ("group_id", "preparation_id") REFERENCES "preparation"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kettle_batch" ADD CONSTRAINT "kettle_batch_group_id_kettle_id_fkey" FOREIGN KEY ("group_id", "kettle_id") REFERENCES "kettle"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "batch_ingredient" ADD CONSTRAINT "batch_ingredient_group_id_batch_id_fkey" FOREIGN KEY ("group_id", "batch_id") REFERENCES "kettle_batch"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "batch_ingredient" ADD CONSTRAINT "batch_ingredient_group_id_lot_id_fkey" FOREIGN KEY ("group_id", "lot_id") REFERENCES "ingredient_lot"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "canner_load" ADD CONSTRAINT "canner_load_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "canner_load" ADD CONSTRAINT "canner_load_group_id_canner_id_fkey" FOREIGN KEY ("group_id", "canner_id") REFERENCES "canner"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "canner_load" ADD CONSTRAINT "canner_load_group_id_operator_id_fkey" FOREIGN KEY ("group_id", "operator_id") REFERENCES "person"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_group_id_batch_id_fkey" FOREIGN KEY ("group_id", "batch_id") REFERENCES "kettle_batch"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_group_id_load_id_fkey" FOREIGN KEY ("group_id", "load_id") REFERENCES "canner_load"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "jar" ADD CONSTRAINT "jar_group_id_batch_id_fkey" FOREIGN KEY ("group_id", "batch_id") REFERENCES "kettle_batch"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "jar" ADD CONSTRAINT "jar_group_id_lot_id_fkey" FOREIGN KEY ("group_id", "lot_id") REFERENCES "lot"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "jar" ADD CONSTRAINT "jar_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "jar_load" ADD CONSTRAINT "jar_load_group_id_jar_id_fkey" FOREIGN KEY ("group_id", "jar_id") REFERENCES "jar"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "jar_load" ADD CONSTRAINT "jar_load_group_id_load_id_fkey" FOREIGN KEY ("group_id", "load_id") REFERENCES "canner_load"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "award" ADD CONSTRAINT "award_group_id_preparation_id_fkey" FOREIGN KEY ("group_id", "preparation_id") REFERENCES "preparation"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "award" ADD CONSTRAINT "award_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "incident" ADD CONSTRAINT "incident_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
