import { dayOfSixDigits } from '../dates.js';
import type { Label, LabelForm, LabelNote } from '../label.js';
import type { Carrier } from './scan.js';
import type { Element } from './values.js';
import { writeBracketed } from './write.js';

export interface Gs1Facts {
  readonly form: LabelForm;
  readonly carrier: Carrier | null;
  readonly notes: readonly LabelNote[];
}

/** What of an element string has a name of its own in a label. */
const NAMED = new Set(['01', '10', '11', '17', '21', '30', '7003']);

/** In brackets, the canonical order: the product, what has a predefined length, the rest. */
const FIRST = ['00', '01', '02', '03', '8006'];

export function gs1Label(
  elements: readonly Element[],
  currentYear: number,
  { form, carrier, notes }: Gs1Facts,
): Label {
  const ordered = inOrder(elements);
  const values = new Map(ordered.map(({ identifier, value }) => [identifier.ai, value]));
  const get = (ai: string) => values.get(ai) ?? null;
  const gtin14 = get('01') ?? get('03') ?? get('8006')?.slice(0, 14) ?? null;
  const expiry = expiryOf(get('17'), get('7003'), currentYear);
  const made = get('11');
  const count = get('30') ?? get('37');
  return {
    standard: 'GS1',
    form,
    carrier,
    deviceIdentifier: gtin14,
    gtin14,
    labeler: null,
    lot: get('10'),
    expiry: expiry.date,
    expiryTime: expiry.time,
    productionDate: made === null ? null : dayOfSixDigits(made, currentYear),
    serial: get('21'),
    quantity: count === null ? null : Number(count),
    others: ordered
      .filter(({ identifier }) => !NAMED.has(identifier.ai))
      .map(({ identifier: { ai, title }, value }) => ({ identifier: ai, title, value })),
    canonical: writeBracketed(ordered),
    notes: expiry.monthOnly ? [...notes, 'day_not_stated'] : notes,
  };
}

interface Expiry {
  readonly date: string | null;
  readonly time: string | null;
  readonly monthOnly: boolean;
}

function expiryOf(day: string | null, time: string | null, currentYear: number): Expiry {
  if (time !== null) {
    const date = dayOfSixDigits(time.slice(0, 6), currentYear);
    return { date, time: `${time.slice(6, 8)}:${time.slice(8)}`, monthOnly: false };
  }
  if (day === null) return { date: null, time: null, monthOnly: false };
  return { date: dayOfSixDigits(day, currentYear), time: null, monthOnly: day.endsWith('00') };
}

function inOrder(elements: readonly Element[]): Element[] {
  const once = new Map(elements.map((element) => [element.identifier.ai, element]));
  return [...once.values()].sort((one, other) => {
    const [a, b] = [one.identifier, other.identifier];
    return rank(a.ai, a.predefined) - rank(b.ai, b.predefined) || (a.ai < b.ai ? -1 : 1);
  });
}

function rank(ai: string, predefined: boolean): number {
  if (FIRST.includes(ai)) return 0;
  return predefined ? 1 : 2;
}
