-- What the practice wants of its ordering: service, review, certainty; what its suppliers ask for; and
-- which use was a one-off event and says nothing about the days to come.

CREATE TABLE planning_settings (
  practice_id uuid PRIMARY KEY REFERENCES practices,
  service_measure text NOT NULL CHECK (service_measure IN ('cycle service', 'fill rate')),
  service_level numeric(7,6) NOT NULL CHECK (service_level > 0 AND service_level < 1),
  review_days smallint NOT NULL CHECK (review_days BETWEEN 0 AND 90),
  expiry_certainty numeric(7,6) NOT NULL CHECK (expiry_certainty > 0 AND expiry_certainty < 1),
  carrying_rate numeric(9,6) NOT NULL CHECK (carrying_rate > 0 AND carrying_rate <= 5),
  order_cost numeric(20,6) NOT NULL CHECK (order_cost >= 0),
  lead_days smallint NOT NULL CHECK (lead_days BETWEEN 0 AND 250),
  leave_out_retakes boolean NOT NULL
);

-- What differs for one consumable; NULL: as the practice has it, or as it is reckoned.
CREATE TABLE consumable_planning (
  practice_id uuid NOT NULL REFERENCES practices,
  consumable_id uuid NOT NULL,
  service_measure text CHECK (service_measure IN ('cycle service', 'fill rate')),
  service_level numeric(7,6) CHECK (service_level > 0 AND service_level < 1),
  review_days smallint CHECK (review_days BETWEEN 0 AND 90),
  expiry_certainty numeric(7,6) CHECK (expiry_certainty > 0 AND expiry_certainty < 1),
  reorder_at numeric(18,6) CHECK (reorder_at >= 0),
  order_up_to numeric(18,6) CHECK (order_up_to >= 0),
  note text CHECK (length(btrim(note)) BETWEEN 1 AND 500),
  PRIMARY KEY (practice_id, consumable_id),
  -- A level means nothing without saying of what.
  CHECK ((service_measure IS NULL) = (service_level IS NULL)),
  CHECK (order_up_to IS NULL OR reorder_at IS NULL OR order_up_to >= reorder_at),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id)
);

CREATE TABLE supplier_terms (
  practice_id uuid NOT NULL REFERENCES practices,
  supplier_id uuid NOT NULL,
  lead_days smallint CHECK (lead_days BETWEEN 0 AND 250), -- working days of the supplier, as stated
  order_cost numeric(20,6) CHECK (order_cost >= 0),
  minimum_order numeric(20,6) CHECK (minimum_order >= 0),
  freight numeric(20,6) NOT NULL CHECK (freight >= 0),
  free_freight_from numeric(20,6) CHECK (free_freight_from >= 0),
  working_days text[] NOT NULL CHECK (cardinality(working_days) BETWEEN 1 AND 7
    AND working_days <@ ARRAY['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday',
                              'sunday']),
  PRIMARY KEY (practice_id, supplier_id),
  FOREIGN KEY (practice_id, supplier_id) REFERENCES suppliers (practice_id, id)
);

-- Marks are withdrawn, never deleted: what a forecast once left out stays known.
CREATE TABLE one_off_marks (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  consumable_id uuid NOT NULL,
  first_day date NOT NULL,
  last_day date NOT NULL,
  note text NOT NULL CHECK (length(btrim(note)) BETWEEN 1 AND 500),
  person_id uuid NOT NULL,
  made_at timestamptz NOT NULL,
  withdrawn_at timestamptz,
  withdrawn_by uuid,
  CHECK (last_day >= first_day),
  CHECK ((withdrawn_at IS NULL) = (withdrawn_by IS NULL)),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id),
  FOREIGN KEY (practice_id, person_id) REFERENCES people (practice_id, id),
  FOREIGN KEY (practice_id, withdrawn_by) REFERENCES people (practice_id, id)
);
CREATE INDEX one_off_marks_consumable ON one_off_marks (practice_id, consumable_id, first_day);

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['planning_settings', 'consumable_planning', 'supplier_terms',
                           'one_off_marks'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT UPDATE ON planning_settings, consumable_planning, supplier_terms TO traybook_app;
GRANT UPDATE (withdrawn_at, withdrawn_by) ON one_off_marks TO traybook_app;
