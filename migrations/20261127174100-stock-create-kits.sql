-- A pack may hold several consumables: a kit, or a box of mixed shades. What the pack is listed under is
-- its own content; these are its further parts, each with its share of the price.

CREATE TABLE presentation_parts (
  presentation_id uuid NOT NULL,
  practice_id uuid NOT NULL REFERENCES practices,
  position integer NOT NULL CHECK (position > 0),
  consumable_id uuid NOT NULL,
  dispensing text NOT NULL CHECK (dispensing IN ('multi-use', 'single-dose', 'by-piece')),
  containers_per_pack integer NOT NULL CHECK (containers_per_pack BETWEEN 1 AND 100000),
  content_per_container numeric(18,6) NOT NULL CHECK (content_per_container > 0),
  cost_share numeric(9,6) NOT NULL CHECK (cost_share >= 0 AND cost_share <= 1), -- of the pack's price
  PRIMARY KEY (presentation_id, consumable_id),
  FOREIGN KEY (practice_id, presentation_id) REFERENCES presentations (practice_id, id),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id)
);

-- The lot of a kit as its box states it. Its parts have lots of their own, or go by the kit's number.
CREATE TABLE kit_lots (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  presentation_id uuid NOT NULL,
  lot_number text CHECK (length(lot_number) BETWEEN 1 AND 60), -- NULL: not stated on the box
  expires_on date,
  status text NOT NULL DEFAULT 'released' CHECK (status IN ('released', 'quarantined', 'recalled')),
  created_at timestamptz NOT NULL DEFAULT now(),
  UNIQUE (practice_id, id),
  FOREIGN KEY (practice_id, presentation_id) REFERENCES presentations (practice_id, id)
);
CREATE UNIQUE INDEX kit_lots_number ON kit_lots (practice_id, presentation_id, lot_number)
  WHERE lot_number IS NOT NULL;
CREATE INDEX kit_lots_by_number ON kit_lots (practice_id, lower(lot_number));

-- A layer that came in a kit: which lot of it, the line of the delivery at which the kit begins, the part's
-- share of the price, and what was paid for the whole kit.
ALTER TABLE layers ADD COLUMN kit_lot_id uuid;
ALTER TABLE layers ADD COLUMN kit_line integer CHECK (kit_line BETWEEN 1 AND line_number);
ALTER TABLE layers ADD COLUMN kit_share numeric(9,6) CHECK (kit_share BETWEEN 0 AND 1);
ALTER TABLE layers ADD COLUMN kit_pack_price numeric(20,6) CHECK (kit_pack_price >= pack_price);
ALTER TABLE layers ADD CONSTRAINT layers_kit CHECK (
  (kit_lot_id IS NULL) = (kit_line IS NULL) AND (kit_lot_id IS NULL) = (kit_share IS NULL)
  AND (kit_lot_id IS NULL) = (kit_pack_price IS NULL));
ALTER TABLE layers ADD FOREIGN KEY (practice_id, kit_lot_id) REFERENCES kit_lots (practice_id, id);
CREATE INDEX layers_kit_lot ON layers (kit_lot_id) WHERE kit_lot_id IS NOT NULL;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['presentation_parts', 'kit_lots'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT DELETE ON presentation_parts TO traybook_app;
GRANT UPDATE (status, expires_on) ON kit_lots TO traybook_app;
