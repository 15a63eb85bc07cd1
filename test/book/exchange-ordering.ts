import fc from 'fast-check';
import { csvLine, guarded } from '../../libs/platform/src/index.js';
import type { SmallBook, TestBook } from './book.js';

type Json = Record<string, unknown> & { readonly id: string };

interface Known {
  readonly suppliers: readonly Json[];
  readonly consumables: readonly Json[];
  readonly presentations: readonly Json[];
}

/** What the API says of ordering, thing by thing, with the names that `named` puts for ids. */
export async function toldOfOrdering(
  book: TestBook,
  known: Known,
  named: (value: unknown) => unknown,
): Promise<Record<string, string[]>> {
  const of = async (path: string, pick: (answer: Record<string, unknown>) => unknown) =>
    pick(await book.done<Record<string, unknown>>('GET', path));
  const each = async (things: readonly Json[], path: (id: string) => string, part: string) => {
    const said: string[] = [];
    for (const thing of things) {
      const told = await of(path(thing.id), (answer) => answer[part]);
      said.push(JSON.stringify([named(thing), named(told)]));
    }
    return said.sort();
  };
  const settings = '/reorder/settings';
  return {
    terms: await each(known.suppliers, (id) => `${settings}/suppliers/${id}`, 'terms'),
    packs: await each(known.presentations, (id) => `${settings}/presentations/${id}`, 'terms'),
    parts: await each(known.presentations, (id) => `/presentations/${id}/parts`, 'parts'),
    planning: await each(known.consumables, (id) => `${settings}/consumables/${id}`, 'own'),
    pairs: await book
      .done<{ pairs: Record<string, unknown>[] }>('GET', '/reorder/substitutes')
      .then(({ pairs }) =>
        pairs
          .filter((pair) => pair.withdrawn === false)
          .map(({ consumableId, standInId, note }) =>
            JSON.stringify(named([consumableId, standInId, note])),
          )
          .sort(),
      ),
  };
}

/** Terms, price lists, kits, levels and pairs, each with something that a file could lose. */
export async function addOrdering(s: SmallBook): Promise<void> {
  const { book } = s;
  await book.done('PUT', `/reorder/settings/suppliers/${s.supplier}`, {
    leadDays: 0,
    orderCost: '3.123456',
    minimumOrder: '50.00',
    freight: '7.90',
    freeFreightFrom: '150',
    workingDays: ['saturday', 'tuesday'],
    closures: [
      { firstDay: '2027-08-01', lastDay: '2027-08-20', note: '=Holiday; "long"' },
      { firstDay: '2026-12-24', lastDay: '2026-12-24' },
    ],
  });
  const pack = (id: string) => `/reorder/settings/presentations/${id}`;
  await book.done('PUT', pack(s.paste.presentation), {
    minimumPacks: 2,
    discount: 'incremental',
    prices: [
      { fromPacks: 1, packPrice: '72' },
      { fromPacks: 5, packPrice: '68.333333' },
    ],
  });
  await book.done('PUT', pack(s.bib.presentation), {
    ...{ minimumPacks: 3, discount: 'all units', prices: [] },
  });
  const own = (id: string) => `/reorder/settings/consumables/${id}`;
  await book.done('PUT', own(s.paste.id), {
    ...{ serviceMeasure: 'fill rate', serviceLevel: '0.987654', reviewDays: 0 },
    ...{ expiryCertainty: '0.9', reorderAt: '0', orderUpTo: '12.5', shelfRoom: '24' },
    note: '-Two courses in May',
  });
  await book.done('PUT', own(s.strip.id), { shelfRoom: '400' });
  const substitutes = '/reorder/substitutes';
  const note = 'Only where it does not show; "ask"';
  const pair = { consumableId: s.paste.id, standInId: s.capsule.id };
  const gone = await book.done<{ id: string }>('POST', substitutes, pair);
  await book.done('POST', `${substitutes}/${gone.id}/withdrawal`, {});
  await book.done('POST', substitutes, { ...pair, note });
  await addKit(s);
}

/** A kit of adhesive with etchant gel, strips and capsules, of which two came. */
async function addKit(s: SmallBook): Promise<void> {
  const { book } = s;
  const kit = await book.presentation(s.adhesive.id, 'multi-use', 1, '5', { name: 'Starter, kit' });
  const part = (of: { id: string }, dispensing: string, content: string, share: string) => ({
    ...{ consumableId: of.id, dispensing, containersPerPack: 2, contentPerContainer: content },
    sharePercent: share,
  });
  await book.done('PUT', `/presentations/${kit}/parts`, {
    parts: [
      part(s.strip, 'by-piece', '25', '10.5'),
      part(s.etchant, 'multi-use', '1.2', '33.3333'),
      part(s.capsule, 'single-dose', '0.25', '0'),
    ],
  });
  const line = { presentationId: kit, packs: 2, packPrice: '100.01', locationId: s.store };
  const kitLot = { lotNumber: 'KIT-7', expiresOn: '2029-01-31' };
  await book.deliver(s.supplier, '2026-02-02', [{ ...line, ...kitLot }], { freight: '1' });
}

const HEADS = {
  planning: [
    ...['Consumable', 'Shade', 'Service measured as', 'Wanted service %', 'Days between looks'],
    ...['Order at, set by hand', 'Order up to, set by hand', 'Room on the shelf', 'Why'],
  ],
  prices: ['Consumable', 'Shade', 'Pack', 'From packs', 'Price per pack'],
  parts: [
    ...['Consumable', 'Shade', 'Pack', 'Part', 'Part shade', 'Use', 'Containers per pack'],
    ...['Content per container', 'Share of the price %'],
  ],
  pairs: ['Consumable', 'Shade', 'May be replaced by', 'Substitute shade', 'Why'],
  closures: ['Supplier', 'Closed from', 'Closed until', 'Why'],
};

interface Named {
  readonly name: string;
  readonly shade: string;
  readonly pack: string;
}

/** Lists about ordering for consumables that a book has, the same in every run. */
export function randomOrdering(items: readonly Named[], seed: number): Record<string, string> {
  const figure = fc.tuple(fc.nat(9_999), fc.nat(99_999)).map(([a, b]) => `${a}.${b}1`);
  const note = fc
    .string({ unit: 'grapheme', maxLength: 30 })
    .map((text) => text.replace(/\p{Cc}|\p{Surrogate}/gu, '').trim());
  const facts = fc.record({
    ...{ level: fc.integer({ min: 1, max: 999_900 }), days: fc.nat(90), at: figure, room: figure },
    ...{ note, steps: fc.uniqueArray(fc.integer({ min: 2, max: 99_999 }), { maxLength: 6 }) },
    share: fc.nat(500_000),
  });
  const drawn = fc.sample(facts, { seed, numRuns: items.length });
  const rows = items.flatMap((item, i) => {
    const fact = drawn[i];
    const other = items[(i + 7) % items.length];
    return fact && other ? [{ item, other, ...fact }] : [];
  });
  const list = (head: string[], cells: readonly (readonly string[])[]) =>
    [head, ...cells].map((row) => csvLine(row.map(guarded))).join('');
  const packs = ({ item }: (typeof rows)[number]) => [item.name, item.shade, item.pack];
  return {
    planning: list(
      HEADS.planning,
      rows.map(({ item, level, days, at, room, note: why }) => [
        ...[item.name, item.shade, 'fill rate', `${level / 10_000}`, `${days}`],
        ...[at, `1${at}`, room, why],
      ]),
    ),
    'price-lists': list(
      HEADS.prices,
      rows.flatMap((row) =>
        [1, ...row.steps.sort((a, b) => a - b)].map((from, at) => [
          ...packs(row),
          ...[`${from}`, `${90 - at}.${row.days}`],
        ]),
      ),
    ),
    'kit-parts': list(
      HEADS.parts,
      rows
        .filter((_, i) => i % 3 === 0)
        .map((row) => [
          ...[...packs(row), row.other.name, row.other.shade, 'multi-use', '2', row.room],
          `${row.share / 10_000}`,
        ]),
    ),
    substitutes: list(
      HEADS.pairs,
      rows.map(({ item, other, note: why }) => [
        ...[item.name, item.shade, other.name, other.shade, why],
      ]),
    ),
    closures: list(
      HEADS.closures,
      Array.from({ length: 12 }, (_, i) => [
        ...['Northgate Supply', `20${40 + i}-02-01`, `20${40 + i}-02-${10 + i}`],
        rows[i]?.note ?? '',
      ]),
    ),
  };
}
