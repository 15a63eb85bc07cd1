-- Orders to suppliers: who wanted what, why, who approved it, how it was sent and what came of it.
-- What has arrived is not written here: it is the lines of deliveries that name a line of an order.

CREATE TABLE order_rules (
  practice_id uuid PRIMARY KEY REFERENCES practices,
  monthly_budget numeric(20,6) CHECK (monthly_budget >= 0), -- NULL: no budget
  approve_up_to numeric(20,6) CHECK (approve_up_to >= 0),   -- NULL: any order; above it the owner decides
  late_after_days smallint NOT NULL CHECK (late_after_days BETWEEN 0 AND 60)
);

CREATE TABLE orders (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  number integer NOT NULL CHECK (number > 0), -- counted up in the practice, what people say on the phone
  supplier_id uuid NOT NULL,
  state text NOT NULL CHECK (state IN ('draft', 'approved', 'sent', 'closed', 'cancelled')),
  reference text CHECK (length(btrim(reference)) BETWEEN 1 AND 80), -- the supplier's own
  note text CHECK (length(btrim(note)) BETWEEN 1 AND 1000),         -- printed on the order
  freight numeric(20,6) NOT NULL CHECK (freight >= 0),              -- expected
  created_by uuid NOT NULL,
  created_at timestamptz NOT NULL,
  approved_by uuid,
  approved_at timestamptz,
  approved_total numeric(20,6), -- goods and freight as approved: the month's budget counts it
  ordered_on date,              -- the practice's day on which it was sent
  expected_on date,             -- the supplier's word, or else reckoned from its lead time
  sent_by uuid,
  sent_way text CHECK (sent_way IN ('e-mail', 'print', 'by hand')),
  version integer NOT NULL DEFAULT 1, -- counted up by every change: two people never overwrite each other
  UNIQUE (practice_id, id),
  UNIQUE (practice_id, number),
  CHECK ((approved_at IS NULL) = (approved_by IS NULL)),
  CHECK ((approved_at IS NULL) = (approved_total IS NULL)),
  CHECK ((state IN ('approved', 'sent')) <= (approved_at IS NOT NULL)),
  CHECK ((ordered_on IS NULL) = (sent_by IS NULL)),
  CHECK ((ordered_on IS NULL) = (sent_way IS NULL)),
  CHECK ((state = 'sent') <= (ordered_on IS NOT NULL)),
  CHECK (expected_on >= ordered_on),
  FOREIGN KEY (practice_id, supplier_id) REFERENCES suppliers (practice_id, id),
  FOREIGN KEY (practice_id, created_by) REFERENCES people (practice_id, id),
  FOREIGN KEY (practice_id, approved_by) REFERENCES people (practice_id, id),
  FOREIGN KEY (practice_id, sent_by) REFERENCES people (practice_id, id)
);
CREATE INDEX orders_open ON orders (practice_id, supplier_id) WHERE state = 'sent';
CREATE INDEX orders_sent ON orders (practice_id, ordered_on DESC, id DESC);

CREATE TABLE order_lines (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  order_id uuid NOT NULL,
  line_number integer NOT NULL CHECK (line_number > 0),
  presentation_id uuid NOT NULL,
  consumable_id uuid NOT NULL,
  packs integer NOT NULL CHECK (packs BETWEEN 1 AND 100000),
  pack_price numeric(20,6) CHECK (pack_price >= 0), -- expected; NULL: not known
  proposed_packs integer CHECK (proposed_packs >= 0), -- NULL: nobody proposed it
  why text CHECK (length(why) <= 4000),               -- the proposal's sentence on the day
  figures jsonb,                                      -- and the numbers in it
  cancelled_packs integer NOT NULL DEFAULT 0 CHECK (cancelled_packs BETWEEN 0 AND packs), -- will not come
  UNIQUE (practice_id, id),
  UNIQUE (order_id, line_number),
  FOREIGN KEY (practice_id, order_id) REFERENCES orders (practice_id, id),
  FOREIGN KEY (practice_id, presentation_id) REFERENCES presentations (practice_id, id),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id)
);
CREATE INDEX order_lines_order ON order_lines (order_id);
CREATE INDEX order_lines_consumable ON order_lines (practice_id, consumable_id);

-- What happened to an order, in the order in which it happened; only ever added to.
CREATE TABLE order_events (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  order_id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('created', 'changed', 'approved', 'approval withdrawn', 'sent',
    'chased', 'supplier answered', 'lines cancelled', 'closed', 'cancelled')),
  note text CHECK (length(btrim(note)) BETWEEN 1 AND 1000),
  person_id uuid NOT NULL,
  happened_at timestamptz NOT NULL,
  details jsonb,
  FOREIGN KEY (practice_id, order_id) REFERENCES orders (practice_id, id),
  FOREIGN KEY (practice_id, person_id) REFERENCES people (practice_id, id)
);
CREATE INDEX order_events_order ON order_events (order_id, happened_at, id);

-- A line of a delivery that answers a line of an order.
ALTER TABLE layers ADD COLUMN order_line_id uuid;
ALTER TABLE layers ADD FOREIGN KEY (practice_id, order_line_id) REFERENCES order_lines (practice_id, id);
CREATE INDEX layers_order_line ON layers (order_line_id) WHERE order_line_id IS NOT NULL;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['order_rules', 'orders', 'order_lines', 'order_events'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT UPDATE ON order_rules TO traybook_app;
GRANT UPDATE (supplier_id, state, reference, note, freight, approved_by, approved_at, approved_total,
  ordered_on, expected_on, sent_by, sent_way, version) ON orders TO traybook_app;
GRANT UPDATE (line_number, presentation_id, consumable_id, packs, pack_price, cancelled_packs)
  ON order_lines TO traybook_app;
-- Lines of a draft may be taken out; a delivery that names one holds it.
GRANT DELETE ON order_lines TO traybook_app;
