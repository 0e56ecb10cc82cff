-- Claiming in full: a window with an opening and a head start, caps for a household, a waiting list that moves inside the transaction
-- that frees jars, a claim split with another household, and a change of the day's rule that every claimant agrees to.
--
-- Whoever writes claims or waiting wishes of a preparation holds the lock of its row; the locks are taken in the order day, household,
-- preparations by id, head of the history.

ALTER TABLE "day" ADD COLUMN "claims_open_at" TIMESTAMPTZ(3),
  ADD COLUMN "early_minutes" INTEGER NOT NULL DEFAULT 0,
  ADD COLUMN "household_cap" INTEGER;
ALTER TABLE "day"
  ADD CONSTRAINT day_early_minutes CHECK (early_minutes BETWEEN 0 AND 20160),
  ADD CONSTRAINT day_household_cap CHECK (household_cap >= 1),
  ADD CONSTRAINT day_claims_open_before_they_close CHECK (claims_open_at < claims_close_at);

ALTER TABLE "preparation" ADD COLUMN "household_cap" INTEGER,
  ADD COLUMN "waiting" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "preparation"
  ADD CONSTRAINT preparation_household_cap CHECK (household_cap >= 1),
  ADD CONSTRAINT preparation_waiting CHECK (waiting >= 0);

ALTER TABLE "household" ADD COLUMN "left_at" TIMESTAMPTZ(3);

CREATE TABLE "waiting" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "preparation_id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,
    "jars" INTEGER NOT NULL,
    "takes_fewer" BOOLEAN NOT NULL DEFAULT true,
    "place" INTEGER NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    CONSTRAINT "waiting_pkey" PRIMARY KEY ("group_id","id"),
    CONSTRAINT waiting_is_whole_jars CHECK (jars >= 1)
);
CREATE UNIQUE INDEX "waiting_group_id_preparation_id_household_id_key" ON "waiting"("group_id", "preparation_id", "household_id");
CREATE UNIQUE INDEX "waiting_group_id_preparation_id_place_key" ON "waiting"("group_id", "preparation_id", "place");
CREATE INDEX "waiting_group_id_household_id_idx" ON "waiting"("group_id", "household_id");
ALTER TABLE "waiting" ADD CONSTRAINT "waiting_group_id_preparation_id_fkey" FOREIGN KEY ("group_id", "preparation_id") REFERENCES "preparation"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "waiting" ADD CONSTRAINT "waiting_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "claim_split" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "preparation_id" TEXT NOT NULL,
    "from_household_id" TEXT NOT NULL,
    "to_household_id" TEXT NOT NULL,
    "jars" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'offered',
    "offered_at" TIMESTAMPTZ(3) NOT NULL,
    "answered_at" TIMESTAMPTZ(3),
    CONSTRAINT "claim_split_pkey" PRIMARY KEY ("group_id","id"),
    CONSTRAINT claim_split_is_whole_jars CHECK (jars >= 1),
    CONSTRAINT claim_split_is_between_two CHECK (from_household_id <> to_household_id),
    CONSTRAINT claim_split_state CHECK (state IN ('offered', 'accepted', 'declined', 'withdrawn') AND (state = 'offered') = (answered_at IS NULL))
);
CREATE UNIQUE INDEX claim_split_one_at_a_time ON "claim_split"("group_id", "preparation_id", "from_household_id", "to_household_id") WHERE state = 'offered';
CREATE INDEX "claim_split_group_id_preparation_id_idx" ON "claim_split"("group_id", "preparation_id");
CREATE INDEX "claim_split_group_id_from_household_id_idx" ON "claim_split"("group_id", "from_household_id");
CREATE INDEX "claim_split_group_id_to_household_id_idx" ON "claim_split"("group_id", "to_household_id");
ALTER TABLE "claim_split" ADD CONSTRAINT "claim_split_group_id_preparation_id_fkey" FOREIGN KEY ("group_id", "preparation_id") REFERENCES "preparation"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "claim_split" ADD CONSTRAINT "claim_split_group_id_from_household_id_fkey" FOREIGN KEY ("group_id", "from_household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "claim_split" ADD CONSTRAINT "claim_split_group_id_to_household_id_fkey" FOREIGN KEY ("group_id", "to_household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "rule_change" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "day_id" TEXT NOT NULL,
    "from_rule" TEXT NOT NULL,
    "to_rule" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'asked',
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    "settled_at" TIMESTAMPTZ(3),
    CONSTRAINT "rule_change_pkey" PRIMARY KEY ("group_id","id"),
    CONSTRAINT rule_change_state CHECK (state IN ('asked', 'made', 'refused', 'withdrawn') AND (state = 'asked') = (settled_at IS NULL))
);
CREATE UNIQUE INDEX rule_change_one_at_a_time ON "rule_change"("group_id", "day_id") WHERE state = 'asked';
CREATE INDEX "rule_change_group_id_day_id_idx" ON "rule_change"("group_id", "day_id");
ALTER TABLE "rule_change" ADD CONSTRAINT "rule_change_group_id_day_id_fkey" FOREIGN KEY ("group_id", "day_id") REFERENCES "day"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "rule_agreement" (
    "group_id" TEXT NOT NULL,
    "rule_change_id" TEXT NOT NULL,
    "household_id" TEXT NOT NULL,
    "agreed_at" TIMESTAMPTZ(3) NOT NULL,
    CONSTRAINT "rule_agreement_pkey" PRIMARY KEY ("group_id","rule_change_id","household_id")
);
CREATE INDEX "rule_agreement_group_id_household_id_idx" ON "rule_agreement"("group_id", "household_id");
ALTER TABLE "rule_agreement" ADD CONSTRAINT "rule_agreement_group_id_rule_change_id_fkey" FOREIGN KEY ("group_id", "rule_change_id") REFERENCES "rule_change"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "rule_agreement" ADD CONSTRAINT "rule_agreement_group_id_household_id_fkey" FOREIGN KEY ("group_id", "household_id") REFERENCES "household"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
REVOKE UPDATE, DELETE, TRUNCATE ON rule_agreement FROM lidsong_app;
