-- A line of a delivery that was booked wrongly is put right by counter-entries and a new layer.
-- continues: the same goods under the right lot or expiry; what had left stays under the wrong one.
-- replaces: another line altogether, while nothing of the wrong one had been touched.

ALTER TABLE layers ADD COLUMN continues_layer_id uuid;
ALTER TABLE layers ADD COLUMN replaces_layer_id uuid;
ALTER TABLE layers ADD COLUMN undone boolean NOT NULL DEFAULT false; -- replaced: it never was
ALTER TABLE layers ADD COLUMN correction_note text CHECK (length(btrim(correction_note)) BETWEEN 1 AND 300);
ALTER TABLE layers ADD CONSTRAINT layers_correction CHECK (
  (continues_layer_id IS NULL OR replaces_layer_id IS NULL)
  AND (correction_note IS NOT NULL) = (coalesce(continues_layer_id, replaces_layer_id) IS NOT NULL));
ALTER TABLE layers ADD CONSTRAINT layers_undone_is_gone CHECK (NOT undone OR out_quantity = received);
ALTER TABLE layers ADD FOREIGN KEY (practice_id, continues_layer_id) REFERENCES layers (practice_id, id);
ALTER TABLE layers ADD FOREIGN KEY (practice_id, replaces_layer_id) REFERENCES layers (practice_id, id);
CREATE INDEX layers_continues ON layers (continues_layer_id) WHERE continues_layer_id IS NOT NULL;
CREATE UNIQUE INDEX layers_replaces ON layers (replaces_layer_id) WHERE replaces_layer_id IS NOT NULL;

-- The line of an order goes along to the layer that replaces another; totals of the delivery follow.
GRANT UPDATE (undone, order_line_id) ON layers TO traybook_app;
GRANT UPDATE (goods_total, landed_total, freight, duty, discount) ON deliveries TO traybook_app;

-- A receipt may be taken back in parts, one for each place where something of it is. Everything else is
-- still reversed once; a layer can never give back more than it received.
DROP INDEX movements_reverses;
CREATE INDEX movements_reverses ON movements (reverses_id) WHERE reverses_id IS NOT NULL;
CREATE UNIQUE INDEX movements_reverses_once ON movements (reverses_id)
  WHERE reverses_id IS NOT NULL AND to_account <> 'supplier';
