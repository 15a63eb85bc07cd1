import fc from 'fast-check';
import type pg from 'pg';
import { CreatePerson } from '#lib/access';
import { csvLine, guarded } from '../../libs/platform/src/index.js';
import { PASSWORD } from '../http/service.js';
import { openStockedBook, postVisit, type SmallBook, TestBook, type TestService } from './book.js';
import { addOrdering, randomOrdering, toldOfOrdering } from './exchange-ordering.js';

/** All pages of a list of the API. */
export async function all<T>(book: TestBook, path: string): Promise<T[]> {
  const items: T[] = [];
  let cursor: string | null = '';
  while (cursor !== null) {
    const sign = path.includes('?') ? '&' : '?';
    const page: { items: T[]; nextCursor?: string | null } = await book.done(
      'GET',
      `${path}${sign}limit=100${cursor === '' ? '' : `&cursor=${encodeURIComponent(cursor)}`}`,
    );
    items.push(...page.items);
    cursor = page.nextCursor ?? null;
  }
  return items;
}

export type Json = Record<string, unknown> & { readonly id: string };

const BY_WHOM_AND_WHEN = [
  ...['id', 'layerId', 'recordedAt', 'recordedBy', 'version', 'latestVersion'],
  ...['bookedBy', 'bookedAt'],
];

/** What the API says of a book, with names in the place of ids: two books that are alike say the same. */
export async function told(book: TestBook): Promise<Record<string, unknown>> {
  const suppliers = await all<Json>(book, '/suppliers');
  const locations = await all<Json>(book, '/locations');
  const consumables = await all<Json>(book, '/consumables');
  const names = new Map<unknown, unknown>(
    [...suppliers, ...locations].map((each) => [each.id, each.name]),
  );
  for (const each of consumables) names.set(each.id, `${each.name} / ${each.shade}`);
  const presentations = await all<Json>(book, '/presentations');
  const summaries = await all<Json>(book, '/procedure-templates');
  for (const each of summaries) names.set(each.id, each.name);
  const templates = await Promise.all(
    summaries.map((each) => book.done<Json>('GET', `/procedure-templates/${each.id}`)),
  );
  const stock = await all<Json & Record<string, Json>>(book, '/stock');
  const booked = await all<Json>(book, '/booked-visits?from=2026-01-01&to=2099-12-31');
  const named = (value: unknown): unknown =>
    JSON.parse(
      JSON.stringify(value, (key, each) => {
        if (BY_WHOM_AND_WHEN.includes(key)) {
          return undefined;
        }
        return names.has(each) ? names.get(each) : each;
      }),
    );
  const sorted = (list: readonly unknown[]) =>
    list.map((each) => JSON.stringify(named(each))).sort();
  return {
    suppliers: sorted(suppliers),
    locations: sorted(locations),
    consumables: sorted(consumables),
    presentations: sorted(presentations),
    templates: sorted(templates),
    stock: sorted(stock),
    booked: sorted(booked),
    ...(await toldOfOrdering(book, { suppliers, consumables, presentations }, named)),
  };
}

/** A book with a little of everything that can go wrong on the way through a file. */
export async function awkwardBook(service: TestService, prefix: string): Promise<SmallBook> {
  const s = await openStockedBook(service, prefix);
  const { book } = s;
  await book.done('POST', '/suppliers', {
    name: '=SUM(A1;A2)',
    email: '+49@x.example',
    language: 'de',
  });
  await book.done('POST', '/suppliers', {
    name: '\'- Ümläut; "quoted", @home',
    customerNumber: '00123',
  });
  const drawer = await book.location('-Drawer, 1', 'drawer', s.room);
  const odd = await book.consumable('+Odd "item"; with, marks', 'misc', 'cm', {
    size: '1/2',
    grit: '007',
  });
  await book.presentation(odd, 'multi-use', 3, '0.123456', {
    deviceIdentifier: '04012345678901',
    listPrice: '0.333333',
  });
  const retired = await book.presentation(odd, 'multi-use', 2, '5', {
    name: 'Old pack',
    articleCode: '=1',
  });
  await book.deliver(
    s.supplier,
    '2026-02-01',
    [
      {
        presentationId: retired,
        packs: 1,
        packPrice: '9.99',
        locationId: drawer,
        lotNumber: '0012',
        expiresOn: '2026-03-31',
      },
      {
        presentationId: s.paste.presentation,
        packs: 3,
        packPrice: '70.01',
        locationId: s.store,
        lotNumber: 'P-2',
        expiresOn: '2028-06-30',
      },
    ],
    { freight: '6.90' },
  );
  await book.done('PATCH', `/presentations/${retired}`, { active: false });
  const stock = await all<Json & { consumable: Json; lot: Json }>(book, '/stock');
  const of = (id: string) => stock.find((each) => each.consumable.id === id)?.id;
  await book.done('POST', '/stock/openings', {
    holdingId: of(s.adhesive.id),
    openedOn: '2026-03-01',
  });
  await book.done('POST', '/stock/moves', {
    holdingId: of(s.strip.id),
    toLocationId: s.room,
    quantity: '33',
  });
  const lot = stock.find((each) => each.lot.lotNumber === 'P-2')?.lot.id;
  await book.done('PUT', `/lots/${lot}/status`, { status: 'quarantined', note: 'Box was wet.' });
  await addOrdering(s);
  await postVisit(s);
  const visit = {
    restorations: [
      {
        templateId: s.template,
        tooth: '21',
        surfaces: 'MI',
        reason: 'cosmetic',
        shades: [s.paste.id],
      },
      { templateId: s.capsuleTemplate },
    ],
  };
  await book.done('POST', '/booked-visits', { day: '2026-12-20', chartReference: 'C-7', ...visit });
  const dentistId = book.practice.people.dentist.id;
  await book.done('POST', '/booked-visits', {
    day: '2026-12-21',
    externalReference: 'A-1',
    dentistId,
    locationId: s.room,
    restorations: [{ templateId: s.template }],
  });
  await book.done('POST', '/booked-visits', {
    day: '2026-12-21',
    alike: 4,
    restorations: [{ templateId: s.template }],
  });
  return s;
}

/** Names and figures of every kind, the same in every run. */
export function randomLists(seed: number): {
  readonly consumables: string;
  readonly stock: string;
  /** By kind. */
  readonly ordering: Record<string, string>;
} {
  const name = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
    // What no name may hold, and what would name two things alike.
    .map((text) => text.replace(/\p{Cc}|\p{Surrogate}/gu, '').trim());
  const figure = fc.tuple(fc.nat(9_999), fc.nat(99_999)).map(([a, b]) => `${a}.${b}1`);
  const item = fc.record({ name, shade: name, lot: name, content: figure, price: figure });
  const items = fc.sample(item, { seed, numRuns: 60 });
  const row = (cells: readonly string[]) => csvLine(cells.map(guarded));
  const head = [
    'Consumable',
    'Shade',
    'Category',
    'Stock unit',
    'Pack',
    'Use',
    'Containers per pack',
  ];
  const stocked = ['Consumable', 'Shade', 'Lot', 'Location', 'Supplier', 'Quantity', 'Value'];
  return {
    consumables: [
      row([...head, 'Content per container', 'Price per pack']),
      ...items.map((each, i) =>
        row([
          `${i}${each.name}`,
          each.shade,
          'misc',
          'g',
          `Pack ${each.name}`,
          'multi-use',
          '2',
          each.content,
          each.price,
        ]),
      ),
    ].join(''),
    stock: [
      row(stocked),
      ...items.map((each, i) =>
        row([
          `${i}${each.name}`,
          each.shade,
          each.lot,
          'Store',
          'Northgate Supply',
          each.price,
          each.content,
        ]),
      ),
    ].join(''),
    ordering: randomOrdering(
      items.map(({ name: given, shade }, i) => ({
        ...{ name: `${i}${given}`, shade, pack: `Pack ${given}` },
      })),
      seed,
    ),
  };
}

/** An empty practice in which the dentists of another one work too. */
export async function emptyBook(
  { service, owner }: { readonly service: TestService; readonly owner: pg.Client },
  prefix: string,
  like: TestBook,
): Promise<TestBook> {
  const book = await TestBook.open(service, prefix);
  const { rows } = await owner.query<{ display_name: string }>(
    "SELECT display_name FROM people WHERE practice_id = $1 AND role = 'dentist'",
    [like.practice.owner.practiceId],
  );
  for (const [i, row] of rows.entries()) {
    await service.app.get(CreatePerson).run(book.practice.owner, {
      displayName: row.display_name,
      signInName: `${prefix}.guest${i}`,
      password: PASSWORD,
      role: 'dentist',
    });
  }
  return book;
}
