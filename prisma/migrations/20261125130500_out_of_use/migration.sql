-- A burner or a kettle is taken out of use with its reason, like a canner: what was cooked on it stays traceable.
ALTER TABLE burner ADD COLUMN out_of_use TEXT;
ALTER TABLE kettle ADD COLUMN out_of_use TEXT;

-- While a mail is being sent nobody else takes it up; after a failed try it waits until then.
ALTER TABLE outgoing_mail ADD COLUMN next_try_at TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP;
DROP INDEX IF EXISTS "outgoing_mail_sent_at_created_at_idx";
CREATE INDEX "outgoing_mail_sent_at_next_try_at_idx" ON outgoing_mail (sent_at, next_try_at);
