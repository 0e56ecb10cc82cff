-- Who took a canner over from whom, during a load. The load itself names whoever minds it now. A ledger: it only grows.
CREATE TABLE "operator_relief" (
    "group_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "load_id" TEXT NOT NULL,
    "from_id" TEXT NOT NULL,
    "to_id" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "turn" INTEGER NOT NULL,

    CONSTRAINT "operator_relief_pkey" PRIMARY KEY ("group_id","id"),
    CONSTRAINT operator_relief_people CHECK (from_id <> to_id)
);
CREATE UNIQUE INDEX "operator_relief_group_id_load_id_turn_key" ON "operator_relief"("group_id", "load_id", "turn");
ALTER TABLE "operator_relief" ADD CONSTRAINT "operator_relief_group_id_load_id_fkey" FOREIGN KEY ("group_id", "load_id") REFERENCES "canner_load"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "operator_relief" ADD CONSTRAINT "operator_relief_group_id_from_id_fkey" FOREIGN KEY ("group_id", "from_id") REFERENCES "person"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "operator_relief" ADD CONSTRAINT "operator_relief_group_id_to_id_fkey" FOREIGN KEY ("group_id", "to_id") REFERENCES "person"("group_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
GRANT SELECT, INSERT ON operator_relief TO lidsong_app;
REVOKE UPDATE, DELETE ON operator_relief FROM lidsong_app;
