-- Lots, layers, holdings and the append-only ledger of movements.

CREATE TABLE lots (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  consumable_id uuid NOT NULL,
  lot_number text CHECK (length(lot_number) BETWEEN 1 AND 60), -- NULL: not stated on the label
  expires_on date,
  status text NOT NULL DEFAULT 'released' CHECK (status IN ('released', 'quarantined', 'recalled')),
  created_at timestamptz NOT NULL DEFAULT now(),
  UNIQUE (practice_id, id),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id)
);
CREATE UNIQUE INDEX lots_number ON lots (practice_id, consumable_id, lot_number)
  WHERE lot_number IS NOT NULL;
CREATE INDEX lots_by_number ON lots (practice_id, lower(lot_number));

CREATE TABLE lot_status_changes (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  lot_id uuid NOT NULL,
  status text NOT NULL,
  note text NOT NULL,
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  FOREIGN KEY (practice_id, lot_id) REFERENCES lots (practice_id, id)
);
CREATE INDEX lot_status_changes_lot ON lot_status_changes (lot_id, recorded_at);

CREATE TABLE deliveries (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  supplier_id uuid NOT NULL,
  received_on date NOT NULL,
  reference text,
  freight numeric(20,6) NOT NULL DEFAULT 0 CHECK (freight >= 0),
  discount numeric(20,6) NOT NULL DEFAULT 0 CHECK (discount >= 0),
  spread_key text NOT NULL DEFAULT 'value' CHECK (spread_key IN ('value', 'quantity')),
  goods_total numeric(20,6) NOT NULL CHECK (goods_total >= 0),
  landed_total numeric(20,6) NOT NULL CHECK (landed_total >= 0),
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  reversed_at timestamptz,
  reversed_by uuid,
  reversal_note text,
  UNIQUE (practice_id, id),
  CHECK (landed_total = goods_total + freight - discount),
  FOREIGN KEY (practice_id, supplier_id) REFERENCES suppliers (practice_id, id)
);
CREATE INDEX deliveries_date ON deliveries (practice_id, received_on DESC, id DESC);

-- One delivery line. The lot's expiry and status are repeated here so that choosing and locking
-- stock reads these rows only; both are written together with the lot.
CREATE TABLE layers (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  delivery_id uuid NOT NULL,
  line_number integer NOT NULL CHECK (line_number > 0),
  lot_id uuid NOT NULL,
  consumable_id uuid NOT NULL,
  presentation_id uuid NOT NULL,
  location_id uuid NOT NULL,
  packs integer NOT NULL CHECK (packs > 0),
  pack_price numeric(20,6) NOT NULL CHECK (pack_price >= 0),
  dispensing text NOT NULL CHECK (dispensing IN ('multi-use', 'single-dose', 'by-piece')),
  content_per_container numeric(18,6) NOT NULL CHECK (content_per_container > 0),
  received_on date NOT NULL,
  expires_on date,
  lot_status text NOT NULL CHECK (lot_status IN ('released', 'quarantined', 'recalled')),
  received numeric(18,6) NOT NULL CHECK (received > 0),
  landed_cost numeric(20,6) NOT NULL CHECK (landed_cost >= 0),
  out_quantity numeric(18,6) NOT NULL DEFAULT 0,
  out_cost numeric(20,6) NOT NULL DEFAULT 0,
  UNIQUE (practice_id, id),
  UNIQUE (delivery_id, line_number),
  CHECK (out_quantity BETWEEN 0 AND received),
  CHECK (out_cost BETWEEN 0 AND landed_cost),
  CHECK (out_quantity <> received OR out_cost = landed_cost),
  CHECK (out_quantity <> 0 OR out_cost = 0),
  FOREIGN KEY (practice_id, delivery_id) REFERENCES deliveries (practice_id, id),
  FOREIGN KEY (practice_id, lot_id) REFERENCES lots (practice_id, id),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id),
  FOREIGN KEY (practice_id, presentation_id) REFERENCES presentations (practice_id, id),
  FOREIGN KEY (practice_id, location_id) REFERENCES locations (practice_id, id)
);
CREATE INDEX layers_consumable ON layers (practice_id, consumable_id, received_on DESC, id DESC);
CREATE INDEX layers_live ON layers (practice_id, consumable_id) WHERE out_quantity < received;
CREATE INDEX layers_lot ON layers (lot_id);

-- What is physically somewhere: the sealed part of a layer at a location, or one opened container.
CREATE TABLE holdings (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  layer_id uuid NOT NULL,
  location_id uuid NOT NULL,
  on_hand numeric(18,6) NOT NULL CHECK (on_hand >= 0),
  opened_on date,
  use_by date, -- effective expiry of an opened container
  UNIQUE (practice_id, id),
  CHECK (opened_on IS NOT NULL OR use_by IS NULL),
  FOREIGN KEY (practice_id, layer_id) REFERENCES layers (practice_id, id),
  FOREIGN KEY (practice_id, location_id) REFERENCES locations (practice_id, id)
);
CREATE UNIQUE INDEX holdings_sealed ON holdings (layer_id, location_id) WHERE opened_on IS NULL;
CREATE INDEX holdings_layer ON holdings (layer_id);
CREATE INDEX holdings_live ON holdings (practice_id, location_id) WHERE on_hand > 0;

CREATE TABLE visits (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  chart_reference text NOT NULL CHECK (length(btrim(chart_reference)) BETWEEN 1 AND 60),
  visited_on date NOT NULL,
  dentist_id uuid NOT NULL,
  location_id uuid NOT NULL,
  staff_count smallint NOT NULL CHECK (staff_count BETWEEN 1 AND 10),
  cost_share_key text NOT NULL CHECK (cost_share_key IN ('equal', 'minutes', 'surfaces')),
  material_cost numeric(20,6) NOT NULL CHECK (material_cost >= 0),
  retake_cost numeric(20,6) NOT NULL CHECK (retake_cost >= 0),
  estimated boolean NOT NULL, -- part of the cost is an open shortfall at the last known cost
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  reversed_at timestamptz,
  reversed_by uuid,
  reversal_note text,
  UNIQUE (practice_id, id),
  FOREIGN KEY (practice_id, dentist_id) REFERENCES people (practice_id, id),
  FOREIGN KEY (practice_id, location_id) REFERENCES locations (practice_id, id)
);
CREATE INDEX visits_date ON visits (practice_id, visited_on DESC, id DESC);
CREATE INDEX visits_chart ON visits (practice_id, lower(chart_reference));

CREATE TABLE usage_lines (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL,
  visit_id uuid NOT NULL,
  position integer NOT NULL,
  restoration_id uuid, -- set: this restoration's own line
  tooth smallint,      -- set: shared by the restorations of this tooth; neither: shared by the visit
  attempt smallint NOT NULL DEFAULT 1 CHECK (attempt > 0),
  consumable_id uuid NOT NULL,
  driver text,         -- of the template line it was planned from; NULL: added by hand
  planned numeric(18,6) NOT NULL CHECK (planned >= 0),
  placed numeric(18,6) NOT NULL CHECK (placed >= 0),
  dispensed numeric(18,6) NOT NULL CHECK (dispensed >= placed),
  charged numeric(18,6) NOT NULL CHECK (charged >= dispensed),
  cost numeric(20,6) NOT NULL CHECK (cost >= 0),
  UNIQUE (practice_id, id),
  UNIQUE (visit_id, position),
  CHECK (restoration_id IS NULL OR tooth IS NULL),
  FOREIGN KEY (practice_id, visit_id) REFERENCES visits (practice_id, id),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id)
);
CREATE INDEX usage_lines_consumable ON usage_lines (practice_id, consumable_id);

CREATE TABLE shortfalls (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  usage_line_id uuid NOT NULL,
  visit_id uuid NOT NULL,
  consumable_id uuid NOT NULL,
  location_id uuid NOT NULL,
  lot_id uuid, -- the lot that was scanned, when the book had none of it left
  used_on date NOT NULL,
  quantity numeric(18,6) NOT NULL CHECK (quantity > 0),
  settled numeric(18,6) NOT NULL DEFAULT 0,
  unit_cost numeric(20,6) NOT NULL CHECK (unit_cost >= 0), -- the last known cost per stock unit
  cost_known boolean NOT NULL,
  cancelled_at timestamptz,
  UNIQUE (practice_id, id),
  CHECK (settled BETWEEN 0 AND quantity),
  FOREIGN KEY (practice_id, usage_line_id) REFERENCES usage_lines (practice_id, id),
  FOREIGN KEY (practice_id, visit_id) REFERENCES visits (practice_id, id),
  FOREIGN KEY (practice_id, lot_id) REFERENCES lots (practice_id, id)
);
CREATE INDEX shortfalls_open ON shortfalls (practice_id, consumable_id, used_on, id)
  WHERE settled < quantity AND cancelled_at IS NULL;
CREATE INDEX shortfalls_visit ON shortfalls (visit_id);
CREATE INDEX shortfalls_lot ON shortfalls (lot_id) WHERE lot_id IS NOT NULL;
CREATE INDEX shortfalls_usage_line ON shortfalls (usage_line_id);

-- The ledger. A movement takes a quantity of one layer from one account to another.
CREATE TABLE movements (
  id uuid PRIMARY KEY,
  sequence bigint GENERATED ALWAYS AS IDENTITY,
  practice_id uuid NOT NULL, -- its practice exists, because its layer does
  layer_id uuid NOT NULL,
  from_account text NOT NULL
    CHECK (from_account IN ('supplier', 'location', 'visit', 'waste', 'count', 'return')),
  to_account text NOT NULL
    CHECK (to_account IN ('supplier', 'location', 'visit', 'waste', 'count', 'return')),
  from_holding_id uuid, from_location_id uuid,
  to_holding_id uuid, to_location_id uuid,
  quantity numeric(18,6) NOT NULL CHECK (quantity > 0),
  cost numeric(20,6) NOT NULL CHECK (cost >= 0), -- value that enters or leaves the stock; moving inside is 0
  occurred_on date NOT NULL,
  visit_id uuid,
  usage_line_id uuid,
  shortfall_id uuid,
  sureness text CHECK (sureness IN ('scanned', 'open container', 'assumed', 'not stated')),
  out_of_order boolean NOT NULL DEFAULT false,
  waste_reason text CHECK (waste_reason IN ('expired', 'after-opening limit', 'contaminated',
    'wrong shade opened', 'residue', 'damaged', 'temperature', 'recall', 'sample')),
  note text,
  reverses_id uuid REFERENCES movements,
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  CHECK (from_account <> to_account OR from_account = 'location'),
  CHECK (from_account = 'location' OR to_account = 'location'),
  CHECK ((from_account = 'location') = (from_holding_id IS NOT NULL)),
  CHECK ((from_account = 'location') = (from_location_id IS NOT NULL)),
  CHECK ((to_account = 'location') = (to_holding_id IS NOT NULL)),
  CHECK ((to_account = 'location') = (to_location_id IS NOT NULL)),
  CHECK (('visit' IN (from_account, to_account)) = (visit_id IS NOT NULL)),
  CHECK (('visit' IN (from_account, to_account)) = (usage_line_id IS NOT NULL)),
  CHECK (to_account <> 'visit' OR sureness IS NOT NULL),
  CHECK (to_account <> 'waste' OR waste_reason IS NOT NULL),
  CHECK (from_account <> 'location' OR to_account <> 'location' OR cost = 0),
  CHECK (from_account NOT IN ('visit', 'waste', 'return') OR reverses_id IS NOT NULL),
  CHECK (to_account <> 'supplier' OR reverses_id IS NOT NULL),
  FOREIGN KEY (practice_id, layer_id) REFERENCES layers (practice_id, id),
  FOREIGN KEY (practice_id, from_holding_id) REFERENCES holdings (practice_id, id),
  FOREIGN KEY (practice_id, to_holding_id) REFERENCES holdings (practice_id, id),
  FOREIGN KEY (practice_id, visit_id) REFERENCES visits (practice_id, id),
  FOREIGN KEY (practice_id, usage_line_id) REFERENCES usage_lines (practice_id, id),
  FOREIGN KEY (practice_id, shortfall_id) REFERENCES shortfalls (practice_id, id)
);
-- Few and small indexes: this is the table that every posting writes to most.
CREATE UNIQUE INDEX movements_reverses ON movements (reverses_id) WHERE reverses_id IS NOT NULL;
CREATE INDEX movements_layer ON movements (layer_id);
CREATE INDEX movements_visit ON movements (visit_id) WHERE visit_id IS NOT NULL;
CREATE INDEX movements_usage_line ON movements (usage_line_id) WHERE usage_line_id IS NOT NULL;
CREATE INDEX movements_shortfall ON movements (shortfall_id) WHERE shortfall_id IS NOT NULL;
CREATE INDEX movements_date ON movements (practice_id, occurred_on, sequence);
CREATE INDEX movements_waste ON movements (practice_id, occurred_on) WHERE to_account = 'waste';

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only: record a reversing entry instead', TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation';
END $$;
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE ON movements
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only_table BEFORE TRUNCATE ON movements
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only_table BEFORE TRUNCATE ON audit_entries
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only_table BEFORE TRUNCATE ON lot_status_changes
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE ON audit_entries
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE ON lot_status_changes
  FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- Rule 2 as one query: received = on hand + used + wasted + returned + count differences.
CREATE VIEW layer_balances WITH (security_invoker = true) AS
SELECT l.practice_id, l.id AS layer_id, l.consumable_id, l.lot_id,
       m.received, h.on_hand, m.used, m.wasted, m.returned, m.count_difference,
       m.cost_in, m.cost_out,
       m.received = h.on_hand + m.used + m.wasted + m.returned + m.count_difference AS balanced
FROM layers l
CROSS JOIN LATERAL (
  SELECT coalesce(sum(quantity) FILTER (WHERE from_account = 'supplier'), 0)
           - coalesce(sum(quantity) FILTER (WHERE to_account = 'supplier'), 0) AS received,
         coalesce(sum(quantity) FILTER (WHERE to_account = 'visit'), 0)
           - coalesce(sum(quantity) FILTER (WHERE from_account = 'visit'), 0) AS used,
         coalesce(sum(quantity) FILTER (WHERE to_account = 'waste'), 0)
           - coalesce(sum(quantity) FILTER (WHERE from_account = 'waste'), 0) AS wasted,
         coalesce(sum(quantity) FILTER (WHERE to_account = 'return'), 0)
           - coalesce(sum(quantity) FILTER (WHERE from_account = 'return'), 0) AS returned,
         coalesce(sum(quantity) FILTER (WHERE to_account = 'count'), 0)
           - coalesce(sum(quantity) FILTER (WHERE from_account = 'count'), 0) AS count_difference,
         coalesce(sum(cost) FILTER (WHERE to_account = 'location'), 0) AS cost_in,
         coalesce(sum(cost) FILTER (WHERE from_account = 'location'), 0) AS cost_out
  FROM movements WHERE layer_id = l.id
) m
CROSS JOIN LATERAL (
  SELECT coalesce(sum(on_hand), 0) AS on_hand FROM holdings WHERE layer_id = l.id
) h;

-- The holdings from which consumables could be taken at a place: there, or up its parents. Scanned lots
-- or holdings come back wherever they are. The stock of a consumable is changed by one transaction at a
-- time: with to_lock, the consumables are locked first, in the order of their ids. The second statement
-- of a volatile function sees what others committed while the first one waited, also the containers
-- that they opened.
CREATE FUNCTION stock_candidates(wanted uuid[], place uuid, day date, scanned uuid[], to_lock boolean)
RETURNS TABLE (holding_id uuid, layer_id uuid, consumable_id uuid, lot_id uuid, lot_number text,
               lot_status text, location_id uuid, distance integer, received_on text, expires_on text,
               opened_on text, use_by text, dispensing text, content_per_container numeric,
               on_hand numeric, received numeric, landed_cost numeric, out_quantity numeric,
               out_cost numeric)
LANGUAGE plpgsql VOLATILE AS $$
#variable_conflict use_column
BEGIN
  IF to_lock THEN
    PERFORM FROM consumables c WHERE c.id = ANY(wanted) ORDER BY c.id FOR NO KEY UPDATE;
  END IF;
  RETURN QUERY
  WITH RECURSIVE chain AS (
    SELECT id, parent_id, 0 AS distance FROM locations WHERE id = place
    UNION ALL
    SELECT p.id, p.parent_id, c.distance + 1 FROM chain c JOIN locations p ON p.id = c.parent_id
    WHERE c.distance < 20
  )
  SELECT h.id, l.id, l.consumable_id, l.lot_id, t.lot_number, l.lot_status, h.location_id, c.distance,
         l.received_on::text, l.expires_on::text, h.opened_on::text, h.use_by::text, l.dispensing,
         l.content_per_container, h.on_hand, l.received, l.landed_cost, l.out_quantity, l.out_cost
  FROM layers l
  JOIN holdings h ON h.layer_id = l.id
  JOIN lots t ON t.id = l.lot_id
  LEFT JOIN chain c ON c.id = h.location_id
  WHERE l.practice_id = current_practice()
    AND l.consumable_id = ANY(wanted) AND l.out_quantity < l.received AND h.on_hand > 0
    AND (l.lot_id = ANY(scanned) OR h.id = ANY(scanned)
         OR (c.id IS NOT NULL AND l.lot_status = 'released'
             AND (l.expires_on IS NULL OR l.expires_on >= day)
             AND (h.use_by IS NULL OR h.use_by >= day)));
END $$;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['lots', 'lot_status_changes', 'deliveries', 'layers', 'holdings', 'visits',
                           'usage_lines', 'shortfalls', 'movements'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT SELECT ON layer_balances TO traybook_app;
GRANT UPDATE (status, expires_on) ON lots TO traybook_app;
GRANT UPDATE (reversed_at, reversed_by, reversal_note) ON deliveries TO traybook_app;
GRANT UPDATE (lot_status, out_quantity, out_cost) ON layers TO traybook_app;
GRANT UPDATE (location_id, on_hand) ON holdings TO traybook_app;
GRANT UPDATE (material_cost, retake_cost, estimated, reversed_at, reversed_by, reversal_note) ON visits TO traybook_app;
GRANT UPDATE (charged, cost) ON usage_lines TO traybook_app;
GRANT UPDATE (settled, cancelled_at) ON shortfalls TO traybook_app;
