/** How the demo book says what the manager settled about buying; one row. */
export const BOUGHT = `
SELECT (SELECT string_agg(t.lot_number, ' ' ORDER BY l.line_number) FROM layers l
        JOIN lots t ON t.id = l.lot_id WHERE l.kit_lot_id IS NOT NULL) AS lots,
       EXISTS (SELECT FROM layers l JOIN movements m ON m.layer_id = l.id
        WHERE l.kit_lot_id IS NOT NULL AND m.to_account = 'visit') AS used,
       (SELECT count(*)::int FROM price_breaks) AS prices,
       (SELECT count(*)::int FROM substitutes WHERE withdrawn_at IS NULL) AS pairs,
       (SELECT count(*)::int FROM layers WHERE continues_layer_id IS NOT NULL) AS corrected,
       v.to_stock, v.amount
FROM price_variances v WHERE v.kind = 'invoice'`;
