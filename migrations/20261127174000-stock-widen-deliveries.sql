-- What arrives is more than good packs at a price: duty, goods spread by weight, free samples, and packs
-- that came damaged or not at all.

ALTER TABLE deliveries ADD COLUMN duty numeric(20,6) NOT NULL DEFAULT 0 CHECK (duty >= 0);
ALTER TABLE deliveries DROP CONSTRAINT deliveries_check;
ALTER TABLE deliveries ADD CONSTRAINT deliveries_landed_total
  CHECK (landed_total = goods_total + freight + duty - discount);
ALTER TABLE deliveries DROP CONSTRAINT deliveries_spread_key_check;
ALTER TABLE deliveries ADD CONSTRAINT deliveries_spread_key
  CHECK (spread_key IN ('value', 'quantity', 'weight'));

ALTER TABLE layers ADD COLUMN weight_grams numeric(18,6) CHECK (weight_grams > 0); -- of the whole line
ALTER TABLE layers ADD COLUMN sample boolean NOT NULL DEFAULT false;
ALTER TABLE layers ADD CONSTRAINT layers_sample_is_free
  CHECK (NOT sample OR (pack_price = 0 AND landed_cost = 0));

-- Packs on the paper that never became stock: they settle no line of an order.
CREATE TABLE delivery_faults (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  delivery_id uuid NOT NULL,
  position integer NOT NULL CHECK (position > 0),
  order_line_id uuid,
  presentation_id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('damaged', 'missing')),
  packs integer NOT NULL CHECK (packs BETWEEN 1 AND 100000),
  lot_number text CHECK (length(btrim(lot_number)) BETWEEN 1 AND 60), -- as on a damaged pack
  note text CHECK (length(btrim(note)) BETWEEN 1 AND 300),
  UNIQUE (practice_id, id),
  UNIQUE (delivery_id, position),
  CHECK (kind = 'damaged' OR lot_number IS NULL),
  FOREIGN KEY (practice_id, delivery_id) REFERENCES deliveries (practice_id, id),
  FOREIGN KEY (practice_id, order_line_id) REFERENCES order_lines (practice_id, id),
  FOREIGN KEY (practice_id, presentation_id) REFERENCES presentations (practice_id, id)
);
CREATE INDEX delivery_faults_lot ON delivery_faults (practice_id, lower(lot_number))
  WHERE lot_number IS NOT NULL;
CREATE INDEX delivery_faults_order_line ON delivery_faults (order_line_id)
  WHERE order_line_id IS NOT NULL;

ALTER TABLE delivery_faults ENABLE ROW LEVEL SECURITY;
CREATE POLICY practice_only ON delivery_faults USING (practice_id = current_practice());
GRANT SELECT, INSERT ON delivery_faults TO traybook_app;
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE ON delivery_faults
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only_table BEFORE TRUNCATE ON delivery_faults
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
