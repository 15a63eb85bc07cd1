-- An invoice that comes after the goods may say another price. What is left is worth the new price; what
-- had left keeps the cost with which it left, and its part of the difference is price variance.

CREATE TABLE delivery_invoices (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  delivery_id uuid NOT NULL,
  reference text CHECK (length(btrim(reference)) BETWEEN 1 AND 80),
  freight numeric(20,6) NOT NULL CHECK (freight >= 0),
  duty numeric(20,6) NOT NULL CHECK (duty >= 0),
  discount numeric(20,6) NOT NULL CHECK (discount >= 0),
  goods_total numeric(20,6) NOT NULL CHECK (goods_total >= 0),
  landed_total numeric(20,6) NOT NULL CHECK (landed_total >= 0),
  landed_before numeric(20,6) NOT NULL CHECK (landed_before >= 0),
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  UNIQUE (practice_id, id),
  CHECK (landed_total = goods_total + freight + duty - discount),
  FOREIGN KEY (practice_id, delivery_id) REFERENCES deliveries (practice_id, id)
);
CREATE INDEX delivery_invoices_delivery ON delivery_invoices (delivery_id, recorded_at);

-- Signed: more than 0 is dearer. amount is no part of any restoration's cost.
CREATE TABLE price_variances (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  layer_id uuid NOT NULL,
  delivery_id uuid NOT NULL,
  consumable_id uuid NOT NULL,
  invoice_id uuid,
  kind text NOT NULL CHECK (kind IN ('invoice', 'correction', 'came back')),
  booked_on date NOT NULL,
  difference numeric(20,6) NOT NULL, -- what the layer cost more
  amount numeric(20,6) NOT NULL,     -- of it, on what had left
  to_stock numeric(20,6) NOT NULL,   -- of it, on what is left
  quantity_gone numeric(18,6) NOT NULL CHECK (quantity_gone >= 0),
  pack_price_before numeric(20,6),   -- NULL: the price did not change with it
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  UNIQUE (practice_id, id),
  CHECK (difference = amount + to_stock),
  CHECK ((kind = 'invoice') = (invoice_id IS NOT NULL)),
  CHECK (kind <> 'came back' OR difference = 0),
  FOREIGN KEY (practice_id, layer_id) REFERENCES layers (practice_id, id),
  FOREIGN KEY (practice_id, delivery_id) REFERENCES deliveries (practice_id, id),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id),
  FOREIGN KEY (practice_id, invoice_id) REFERENCES delivery_invoices (practice_id, id)
);
CREATE INDEX price_variances_layer ON price_variances (layer_id, recorded_at);
CREATE INDEX price_variances_day ON price_variances (practice_id, booked_on);

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['delivery_invoices', 'price_variances'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
    EXECUTE format('CREATE TRIGGER append_only BEFORE UPDATE OR DELETE ON %I
      FOR EACH ROW EXECUTE FUNCTION refuse_change()', t);
    EXECUTE format('CREATE TRIGGER append_only_table BEFORE TRUNCATE ON %I
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', t);
  END LOOP;
END $$;

-- The only way in which the cost of a layer changes: together with the entry that says why. The service
-- itself may not write landed_cost.
CREATE FUNCTION revalue_layers(person uuid, invoice uuid, day date, changes json) RETURNS integer
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE done integer;
BEGIN
  WITH input AS MATERIALIZED (
    SELECT r.* FROM json_to_recordset(changes) AS r(id uuid, layer_id uuid, kind text,
      difference numeric, amount numeric, pack_price numeric, kit_pack_price numeric)
  ), before AS MATERIALIZED (
    SELECT l.id, l.pack_price FROM layers l JOIN input i ON i.layer_id = l.id
    WHERE l.practice_id = current_practice()
  ), changed AS (
    UPDATE layers l SET landed_cost = l.landed_cost + i.difference,
      out_cost = l.out_cost + i.amount, pack_price = i.pack_price,
      kit_pack_price = i.kit_pack_price
    FROM input i
    WHERE l.id = i.layer_id AND l.practice_id = current_practice()
    RETURNING l.id, l.delivery_id, l.consumable_id, l.out_quantity
  )
  INSERT INTO price_variances (id, practice_id, layer_id, delivery_id, consumable_id, invoice_id,
    kind, booked_on, difference, amount, to_stock, quantity_gone, pack_price_before, recorded_by)
  SELECT i.id, current_practice(), c.id, c.delivery_id, c.consumable_id, invoice, i.kind, day,
    i.difference, i.amount, i.difference - i.amount, c.out_quantity, b.pack_price, person
  FROM changed c JOIN input i ON i.layer_id = c.id JOIN before b ON b.id = c.id;
  GET DIAGNOSTICS done = ROW_COUNT;
  RETURN done;
END $$;
REVOKE ALL ON FUNCTION revalue_layers(uuid, uuid, date, json) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION revalue_layers(uuid, uuid, date, json) TO traybook_app;

-- What invoices made the stock of a layer worth more: cost_in - cost_out + revalued is what is left.
CREATE OR REPLACE VIEW layer_balances WITH (security_invoker = true) AS
SELECT l.practice_id, l.id AS layer_id, l.consumable_id, l.lot_id,
       m.received, h.on_hand, m.used, m.wasted, m.returned, m.count_difference,
       m.cost_in, m.cost_out,
       m.received = h.on_hand + m.used + m.wasted + m.returned + m.count_difference AS balanced,
       (SELECT coalesce(sum(v.to_stock), 0) FROM price_variances v WHERE v.layer_id = l.id)
         AS revalued
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
