-- What can be used up, how it is bought, from whom, and where it is kept.

CREATE TABLE suppliers (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 200),
  email text,
  active boolean NOT NULL DEFAULT true,
  UNIQUE (practice_id, id)
);
CREATE UNIQUE INDEX suppliers_name ON suppliers (practice_id, lower(name));

CREATE TABLE locations (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 120),
  kind text NOT NULL CHECK (kind IN ('store', 'fridge', 'room', 'drawer')),
  parent_id uuid,
  active boolean NOT NULL DEFAULT true,
  UNIQUE (practice_id, id),
  FOREIGN KEY (practice_id, parent_id) REFERENCES locations (practice_id, id),
  CHECK (parent_id <> id)
);
CREATE UNIQUE INDEX locations_name ON locations (practice_id, lower(name));

CREATE TABLE consumables (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 200),
  category text NOT NULL CHECK (length(btrim(category)) BETWEEN 1 AND 80),
  stock_unit text NOT NULL CHECK (stock_unit IN ('g', 'mL', 'piece', 'cm', 'use')),
  shade text, opacity text, viscosity text, size text, grit text,
  life_after_opening integer CHECK (life_after_opening > 0),
  life_after_opening_unit text CHECK (life_after_opening_unit IN ('day', 'month')),
  reorder_at numeric(18,6) CHECK (reorder_at >= 0),
  reorder_up_to numeric(18,6) CHECK (reorder_up_to >= reorder_at),
  density_g_per_cm3 numeric(18,6) CHECK (density_g_per_cm3 > 0),
  active boolean NOT NULL DEFAULT true,
  UNIQUE (practice_id, id),
  CHECK ((life_after_opening IS NULL) = (life_after_opening_unit IS NULL)),
  CHECK (reorder_up_to IS NULL OR reorder_at IS NOT NULL)
);
CREATE UNIQUE INDEX consumables_name
  ON consumables (practice_id, lower(name), lower(coalesce(shade, '')), lower(coalesce(size, '')),
                  lower(coalesce(grit, '')));

-- pack -> containers -> content in stock units. How a container is used up:
--   multi-use    opened once, used many times, may have a life after opening (syringe, bottle)
--   single-dose  charged whole once opened (capsule, cartridge)
--   by-piece     whole pieces taken from a box; the box itself is not followed (wedges, strips)
CREATE TABLE presentations (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  consumable_id uuid NOT NULL,
  supplier_id uuid,
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 200),
  dispensing text NOT NULL CHECK (dispensing IN ('multi-use', 'single-dose', 'by-piece')),
  containers_per_pack integer NOT NULL CHECK (containers_per_pack BETWEEN 1 AND 100000),
  content_per_container numeric(18,6) NOT NULL CHECK (content_per_container > 0),
  device_identifier text,
  list_price numeric(20,6) CHECK (list_price >= 0),
  active boolean NOT NULL DEFAULT true,
  UNIQUE (practice_id, id),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id),
  FOREIGN KEY (practice_id, supplier_id) REFERENCES suppliers (practice_id, id)
);
CREATE UNIQUE INDEX presentations_name ON presentations (consumable_id, lower(name));
CREATE INDEX presentations_consumable ON presentations (practice_id, consumable_id);

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['suppliers', 'locations', 'consumables', 'presentations'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE ON %I TO traybook_app', t);
  END LOOP;
END $$;
