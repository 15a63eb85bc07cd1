import { emptyLine, isUntouched, type Line, type Product, packsOf } from './lines.js';

/** What a label says of a pack that came. */
export interface ScannedPack {
  readonly product: Product | null;
  readonly lotNumber: string | null;
  readonly expiresOn: string | null;
}

export interface Scan {
  readonly lines: readonly Line[];
  /** A new line, one more pack, the lot of a line that had none, or nothing to put it on. */
  readonly did: 'added' | 'raised' | 'lot' | 'nothing';
  readonly packs: string;
}

/** Puts a scanned pack on the lines: one more of the same, or a line of its own, called `key`. */
export function withScan(lines: readonly Line[], scan: ScannedPack, key: string): Scan {
  const { product } = scan;
  const nothing = { lines, did: 'nothing', packs: '' } as const;
  if (product === null) {
    const last = lines.findLast((line) => line.product !== null && hasNoLot(line));
    return last && scan.lotNumber !== null ? filled(lines, last, scan) : nothing;
  }
  const same = lines.find((line) => isSame(line, product, scan));
  if (same) return raised(lines, same);
  const open = lines.find((line) => isOf(line, product) && hasNoLot(line) && !isCounted(line));
  if (open && (scan.lotNumber !== null || open.orderLineId !== null)) {
    return filled(lines, open, { ...scan, packs: '1' });
  }
  const place = lines.at(-1)?.locationId ?? '';
  const line = {
    ...emptyLine(key, place),
    ...{ product, packs: '1', lotNumber: scan.lotNumber ?? '', expiresOn: scan.expiresOn ?? '' },
    // Another lot of what was ordered answers the same line of the order.
    orderLineId: lines.find((one) => isOf(one, product))?.orderLineId ?? null,
  };
  const kept = lines.filter((one) => one.product !== null || !isUntouched(one));
  return { lines: [...kept, line], did: 'added', packs: '1' };
}

const isOf = (line: Line, { presentation }: Product) =>
  line.product?.presentation.id === presentation.id;

const hasNoLot = ({ noLot, lotNumber }: Line) => !noLot && lotNumber.trim() === '';

const isCounted = ({ packs }: Line) => packs.trim() !== '';

/** The same pack of the same lot; where the label is silent, a line without a lot. */
function isSame(line: Line, product: Product, { lotNumber, expiresOn }: ScannedPack): boolean {
  if (!isOf(line, product)) return false;
  if (lotNumber === null) return isCounted(line) && line.lotNumber.trim() === '';
  const sameDay = expiresOn === null || line.expiresOn === '' || line.expiresOn === expiresOn;
  return line.lotNumber.trim() === lotNumber && sameDay && !line.noLot;
}

function raised(lines: readonly Line[], same: Line): Scan {
  const packs = String((packsOf(same.packs) ?? 0) + 1);
  return { lines: changed(lines, same, { packs }), did: 'raised', packs };
}

interface Filling extends ScannedPack {
  readonly packs?: string;
}

function filled(lines: readonly Line[], line: Line, { packs, ...scan }: Filling): Scan {
  const part = {
    lotNumber: scan.lotNumber ?? '',
    expiresOn: scan.expiresOn ?? line.expiresOn,
    packs: packs ?? line.packs,
  };
  return { lines: changed(lines, line, part), did: 'lot', packs: part.packs };
}

function changed(lines: readonly Line[], which: Line, part: Partial<Line>): readonly Line[] {
  return lines.map((line) => (line.key === which.key ? { ...line, ...part } : line));
}
