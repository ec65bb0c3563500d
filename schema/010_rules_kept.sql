-- A corrected sheet keeps the log rules it was posted under, unless it was asked to be scaled anew. 1 = so kept, though
-- a later mill file was in force; part of the digest then. Entries from before this edition were always scaled by the
-- mill file in force when they were posted, which is what 0 says.
ALTER TABLE journal ADD COLUMN keeps_rules INTEGER NOT NULL DEFAULT 0 CHECK (keeps_rules IN (0, 1));
