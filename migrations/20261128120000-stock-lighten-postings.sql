-- What a posting costs the database. A visit of 30 lines changes some 30 holdings and layers and asks
-- 250 times whether a row that it names is there.

-- Totals stood in the predicates of two indexes, so that each change of a total wrote a new entry into
-- every index of its table. A column that only changes when the last of it leaves, or when something
-- comes back to an empty place, lets a row be changed where it lies.
ALTER TABLE layers SET (fillfactor = 70);
DROP INDEX layers_live;
ALTER TABLE layers ADD COLUMN live boolean NOT NULL GENERATED ALWAYS AS (out_quantity < received) STORED;
CREATE INDEX layers_live ON layers (practice_id, consumable_id) WHERE live;

ALTER TABLE holdings SET (fillfactor = 70);
DROP INDEX holdings_live;
ALTER TABLE holdings ADD COLUMN live boolean NOT NULL GENERATED ALWAYS AS (on_hand > 0) STORED;
CREATE INDEX holdings_live ON holdings (practice_id, location_id) WHERE live;

-- A movement is of the layer of its holdings, and a usage line of its visit: held by the same key that
-- says that they are there. Every movement has a holding, so that its layer is there as well; a layer,
-- a visit or a usage line is never deleted.
ALTER TABLE holdings ADD CONSTRAINT holdings_of_layer UNIQUE (layer_id, id, practice_id);
ALTER TABLE movements
  DROP CONSTRAINT movements_practice_id_from_holding_id_fkey,
  DROP CONSTRAINT movements_practice_id_to_holding_id_fkey,
  DROP CONSTRAINT movements_practice_id_layer_id_fkey,
  ADD FOREIGN KEY (layer_id, from_holding_id, practice_id)
    REFERENCES holdings (layer_id, id, practice_id),
  ADD FOREIGN KEY (layer_id, to_holding_id, practice_id)
    REFERENCES holdings (layer_id, id, practice_id);
ALTER TABLE holdings DROP CONSTRAINT holdings_practice_id_id_key;
DROP INDEX holdings_layer; -- holdings_of_layer begins with the same column

ALTER TABLE usage_lines ADD CONSTRAINT usage_lines_of_visit UNIQUE (visit_id, id, practice_id);
ALTER TABLE shortfalls
  DROP CONSTRAINT shortfalls_practice_id_usage_line_id_fkey,
  DROP CONSTRAINT shortfalls_practice_id_visit_id_fkey,
  ADD FOREIGN KEY (visit_id, usage_line_id, practice_id)
    REFERENCES usage_lines (visit_id, id, practice_id);
ALTER TABLE movements
  DROP CONSTRAINT movements_practice_id_usage_line_id_fkey,
  DROP CONSTRAINT movements_practice_id_visit_id_fkey,
  ADD FOREIGN KEY (visit_id, usage_line_id, practice_id)
    REFERENCES usage_lines (visit_id, id, practice_id);
ALTER TABLE usage_lines DROP CONSTRAINT usage_lines_practice_id_id_key;

-- The practice of these is that of the row they belong to, which a key of both columns holds.
ALTER TABLE holdings DROP CONSTRAINT holdings_practice_id_fkey;
ALTER TABLE restorations DROP CONSTRAINT restorations_practice_id_fkey;
ALTER TABLE restoration_costs DROP CONSTRAINT restoration_costs_practice_id_fkey;
ALTER TABLE shortfalls DROP CONSTRAINT shortfalls_practice_id_fkey;

CREATE OR REPLACE FUNCTION stock_candidates(wanted uuid[], place uuid, day date, scanned uuid[], to_lock boolean)
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
    AND l.consumable_id = ANY(wanted) AND l.live AND h.live
    AND (l.lot_id = ANY(scanned) OR h.id = ANY(scanned)
         OR (c.id IS NOT NULL AND l.lot_status = 'released'
             AND (l.expires_on IS NULL OR l.expires_on >= day)
             AND (h.use_by IS NULL OR h.use_by >= day)));
END $$;
