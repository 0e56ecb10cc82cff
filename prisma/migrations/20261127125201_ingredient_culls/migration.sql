-- What was sorted out of a delivery when it was weighed in, in the unit of the delivery: only the rest can become jars.
ALTER TABLE "ingredient_lot" ADD COLUMN "culled" DECIMAL(12,3) NOT NULL DEFAULT 0;
ALTER TABLE "ingredient_lot" ADD CONSTRAINT "ingredient_lot_culled" CHECK ("culled" >= 0 AND "culled" <= "quantity");
