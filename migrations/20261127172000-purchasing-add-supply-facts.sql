-- What else planning has to know: the price list and the smallest order of a presentation, the room on
-- the shelf, the days on which a supplier is closed, and what may stand in for what.

-- A presentation without a row: any number of packs, at the price last paid or else its list price.
CREATE TABLE presentation_terms (
  practice_id uuid NOT NULL REFERENCES practices,
  presentation_id uuid NOT NULL,
  minimum_packs integer NOT NULL CHECK (minimum_packs BETWEEN 1 AND 100000),
  discount text NOT NULL CHECK (discount IN ('all units', 'incremental')),
  PRIMARY KEY (practice_id, presentation_id),
  FOREIGN KEY (practice_id, presentation_id) REFERENCES presentations (practice_id, id)
);

CREATE TABLE price_breaks (
  practice_id uuid NOT NULL REFERENCES practices,
  presentation_id uuid NOT NULL,
  from_packs integer NOT NULL CHECK (from_packs BETWEEN 1 AND 100000),
  pack_price numeric(20,6) NOT NULL CHECK (pack_price >= 0),
  PRIMARY KEY (practice_id, presentation_id, from_packs),
  FOREIGN KEY (practice_id, presentation_id) REFERENCES presentation_terms (practice_id, presentation_id)
);

-- The most that fits, what is there and on its way included; NULL: nobody says.
ALTER TABLE consumable_planning ADD COLUMN shelf_room numeric(18,6) CHECK (shelf_room > 0);

CREATE TABLE supplier_closures (
  practice_id uuid NOT NULL REFERENCES practices,
  supplier_id uuid NOT NULL,
  first_day date NOT NULL,
  last_day date NOT NULL,
  note text CHECK (length(btrim(note)) BETWEEN 1 AND 200),
  PRIMARY KEY (practice_id, supplier_id, first_day),
  CHECK (last_day >= first_day),
  FOREIGN KEY (practice_id, supplier_id) REFERENCES supplier_terms (practice_id, supplier_id)
);

-- Pairs are withdrawn, never deleted: who once said that one may stand in for the other stays known.
CREATE TABLE substitutes (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  consumable_id uuid NOT NULL, -- what is missing
  stand_in_id uuid NOT NULL,   -- what may be used instead, when a person agrees
  note text CHECK (length(btrim(note)) BETWEEN 1 AND 500),
  person_id uuid NOT NULL,
  made_at timestamptz NOT NULL,
  withdrawn_at timestamptz,
  withdrawn_by uuid,
  CHECK (consumable_id <> stand_in_id),
  CHECK ((withdrawn_at IS NULL) = (withdrawn_by IS NULL)),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id),
  FOREIGN KEY (practice_id, stand_in_id) REFERENCES consumables (practice_id, id),
  FOREIGN KEY (practice_id, person_id) REFERENCES people (practice_id, id),
  FOREIGN KEY (practice_id, withdrawn_by) REFERENCES people (practice_id, id)
);
CREATE UNIQUE INDEX substitutes_pair ON substitutes (practice_id, consumable_id, stand_in_id)
  WHERE withdrawn_at IS NULL;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['presentation_terms', 'price_breaks', 'supplier_closures', 'substitutes'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT UPDATE ON presentation_terms TO traybook_app;
-- A price list and a calendar are replaced as a whole; the audit trail keeps what was before.
GRANT DELETE ON price_breaks, supplier_closures TO traybook_app;
GRANT UPDATE (withdrawn_at, withdrawn_by) ON substitutes TO traybook_app;
