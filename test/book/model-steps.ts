import fc from 'fast-check';

const DAYS = ['2026-03-02', '2026-03-20', '2026-05-04', '2026-07-01', '2026-11-20'] as const;
const anyDay = fc.constantFrom(...DAYS);
const anyItem = fc.constantFrom('etchant', 'adhesive', 'paste', 'capsule', 'strip', 'bib');
const anyPlace = fc.constantFrom('store', 'room', 'otherRoom');
const pick = fc.nat({ max: 1_000_000 });
/** Mostly not said: most of what names something else is refused. */
const rarely = <T>(said: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 5, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: said });
const amount = fc.constantFrom('0.01', '0.25', '0.333333', '1', '1.5', '2', '3', '4', '7', '40');

/** Anything that somebody of the practice may do next. */
export const step = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('deliver' as const),
      day: anyDay,
      item: anyItem,
      at: anyPlace,
      packs: fc.integer({ min: 1, max: 2 }),
      price: fc.constantFrom('0', '0.07', '9.99', '100'),
      lot: fc.constantFrom('L1', 'L2', null),
      expires: fc.constantFrom('2026-04-01', '2026-06-30', '2028-01-31'),
      freight: fc.constantFrom('0', '3.33'),
      duty: fc.constantFrom('0', '0.05'),
      twoLots: fc.boolean(),
    }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('make a kit' as const) }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('invoice' as const),
      which: pick,
      price: fc.constantFrom('0', '0.08', '11.11', '250'),
      freight: fc.option(fc.constantFrom('0', '7.77')),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('correct' as const),
      which: pick,
      item: rarely(anyItem),
      packs: rarely(fc.constantFrom(1, 2, 3)),
      price: rarely(fc.constantFrom('0', '12.34')),
      lot: fc.constantFrom('L1', 'L2', 'L3', null),
      expires: fc.constantFrom('2026-04-01', '2026-06-30', '2028-01-31'),
      at: rarely(anyPlace),
    }),
  },
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constant('visit' as const),
      day: anyDay,
      at: anyPlace,
      teeth: fc.subarray(['11', '21', '36'], { minLength: 1 }),
      attempts: fc.integer({ min: 1, max: 3 }),
      capsules: fc.boolean(),
      key: fc.constantFrom('equal', 'minutes', 'surfaces'),
      more: fc.option(fc.record({ item: anyItem, amount })),
      scan: rarely(pick),
      minutes: fc.option(fc.integer({ min: 0, max: 200 })),
      assistantMinutes: fc.option(fc.integer({ min: 0, max: 200 })),
      redo: rarely(pick),
    }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('reverse visit' as const), which: pick }) },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('reverse delivery' as const), which: pick }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('reverse movement' as const), which: pick }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constantFrom(
        'write off' as const,
        'return' as const,
        'move' as const,
        'count' as const,
      ),
      which: pick,
      amount,
      at: anyPlace,
      day: anyDay,
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('open' as const), which: pick, day: anyDay }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('hold' as const),
      which: pick,
      status: fc.constantFrom('recalled', 'quarantined', 'released'),
    }),
  },
);
export type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;
