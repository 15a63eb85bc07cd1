-- The levels that planning computes, kept so that an alert can go by them without computing: that takes
-- seconds. They are no facts of the book: each reading replaces the one before.

-- When the levels of a practice were last computed, and from what the book held at that time.
CREATE TABLE computed_level_readings (
  practice_id uuid PRIMARY KEY REFERENCES practices,
  computed_on date NOT NULL,       -- the day of the practice
  read_at timestamptz NOT NULL     -- when the facts were read; a reading of older facts replaces nothing
);

CREATE TABLE computed_levels (
  practice_id uuid NOT NULL REFERENCES practices,
  consumable_id uuid NOT NULL,
  computed_on date NOT NULL,
  reason text NOT NULL CHECK (reason IN ('at or below the reorder point', 'above the reorder point',
                                         'no use expected', 'stopped by a limit')),
  reorder_point numeric(18,6) NOT NULL CHECK (reorder_point >= 0),
  order_up_to numeric(18,6) NOT NULL,
  position numeric(18,6) NOT NULL, -- on hand and on order, less what is owed: as it was
  expiring_first numeric(18,6) NOT NULL CHECK (expiring_first >= 0), -- before goods can be here
  expected_use numeric(18,6) NOT NULL CHECK (expected_use >= 0), -- over lead time and review
  lead_days numeric(8,2) NOT NULL CHECK (lead_days >= 0),        -- mean, calendar days
  review_days smallint NOT NULL CHECK (review_days >= 0),
  service_measure text NOT NULL CHECK (service_measure IN ('cycle service', 'fill rate')),
  service_level numeric(7,6) NOT NULL CHECK (service_level > 0 AND service_level < 1),
  hardly_used boolean NOT NULL,    -- bought for what is owed, not for the shelf
  presentation_id uuid NOT NULL,
  supplier_id uuid,                -- NULL: nobody ever said or sent
  packs integer NOT NULL CHECK (packs >= 0),
  total numeric(20,6) CHECK (total >= 0), -- NULL: no packs, or no price is known
  PRIMARY KEY (practice_id, consumable_id),
  CHECK (order_up_to >= reorder_point),
  CHECK ((reason = 'at or below the reorder point') = (packs > 0)),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id),
  FOREIGN KEY (practice_id, presentation_id) REFERENCES presentations (practice_id, id),
  FOREIGN KEY (practice_id, supplier_id) REFERENCES suppliers (practice_id, id)
);

-- Whether anything was booked since a reading; small, and nearly free to keep.
CREATE INDEX idempotency_keys_time ON idempotency_keys USING brin (created_at)
  WITH (autosummarize = on);

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['computed_level_readings', 'computed_levels'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO traybook_app', t);
  END LOOP;
END $$;
