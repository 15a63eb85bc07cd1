import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { newKey } from '../../../api/idempotency.js';
import type { ScannedThing } from '../../../app/scan/thing.js';
import { useScanner } from '../../../app/scan/use-scanner.js';
import { useText } from '../../../text/text-provider.js';
import { presentationsQuery } from '../api/list-presentations.js';
import { oneSummaryQuery } from '../api/list-summary.js';
import { nameOf } from '../parts/what.js';
import type { Line, Product } from './lines.js';
import { withScan } from './scanned.js';

/** Scans fill in lines: a new one, or one more pack on the line of the same lot. */
export function useReceiveScan(
  lines: readonly Line[],
  onLines: (lines: readonly Line[], product: Product | null) => void,
) {
  const { scan } = useText();
  const words = scan.receive;
  const queries = useQueryClient();
  // Boxes are scanned faster than products are looked up: each scan starts from the one before.
  const now = useRef(lines);
  useEffect(() => {
    now.current = lines;
  }, [lines]);
  const productOf = async (thing: ScannedThing): Promise<Product | undefined> => {
    const { consumableId, presentationId } = thing;
    if (consumableId === null) return undefined;
    const [row, ways] = await Promise.all([
      queries.fetchQuery(oneSummaryQuery(consumableId)),
      queries.fetchQuery(presentationsQuery(consumableId)),
    ]);
    const presentation = ways.find(({ id }) => id === presentationId);
    return row && presentation ? { consumable: row.consumable, presentation } : undefined;
  };
  const onThing = async (thing: ScannedThing): Promise<string | undefined> => {
    if (thing.locationId !== null) return words.notAPack;
    const product = await productOf(thing);
    if (thing.consumableId !== null && !product) return words.notBought(thing.name ?? '');
    const { lotNumber, expiresOn } = thing;
    const done = withScan(
      now.current,
      { product: product ?? null, lotNumber, expiresOn },
      newKey(),
    );
    if (done.did === 'nothing') return words.nothingOpen;
    now.current = done.lines;
    onLines(done.lines, product ?? null);
    const name = product ? nameOf(product.consumable) : '';
    if (done.did === 'raised') return words.raised(name, done.packs);
    return done.did === 'added' ? words.added(name) : words.lotFilled;
  };
  return useScanner({ onThing });
}
