import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatMoney,
  formatQuantity,
  money,
  moneyFromMicro,
  multiplyRatio,
  quantity,
  quantityFromMicro,
} from '#lib/measure';
import { candidate } from './candidate.fixture.js';
import { blockedOn, type Candidate } from './candidate.js';
import { chooseStock, type IssueRequest } from './choose-stock.js';

let ids = 0;

function request(changes: Partial<IssueRequest> & { need: string }): IssueRequest {
  const { need, ...rest } = changes;
  return {
    day: '2026-05-04',
    locationId: 'room',
    needs: [{ consumableId: 'paste', quantity: quantity(need) }],
    scanned: new Set(),
    ifOpenedUseBy: (c) => c.labelExpiry,
    newId: () => {
      ids += 1;
      return `opened-${ids}`;
    },
    ...rest,
  };
}

function taken(candidates: Candidate[], asked: IssueRequest): string[] {
  return chooseStock(candidates, asked).takes.map(
    (t) => `${formatQuantity(t.quantity)} of ${t.lotId.replace('lot of ', '')}`,
  );
}

describe('the order in which stock is taken', () => {
  it('takes the earliest expiry first and spans layers', () => {
    const late = candidate({ holdingId: 'late', labelExpiry: '2027-06-30', onHand: quantity('5') });
    const early = candidate({
      holdingId: 'early',
      labelExpiry: '2026-06-30',
      onHand: quantity('2'),
    });
    expect(taken([late, early], request({ need: '6' }))).toEqual(['2 of early', '4 of late']);
  });

  it('takes an opened container before a sealed one that expires earlier', () => {
    const common = {
      dispensing: 'multi-use',
      content: quantity('4'),
      onHand: quantity('4'),
    } as const;
    const sealed = candidate({ holdingId: 'sealed', ...common, labelExpiry: '2026-06-01' });
    const opened = candidate({
      holdingId: 'opened',
      ...common,
      openedOn: '2026-04-01',
      useBy: '2026-09-01',
    });
    expect(taken([sealed, opened], request({ need: '1' }))).toEqual(['1 of opened']);
  });

  it('looks at the place of use before its parents, whatever expires first', () => {
    const store = candidate({ holdingId: 'store', distance: 1, labelExpiry: '2026-06-01' });
    const room = candidate({ holdingId: 'room', distance: 0, labelExpiry: '2027-06-01' });
    expect(taken([store, room], request({ need: '11' }))).toEqual(['10 of room', '1 of store']);
  });

  it('takes goods without an expiry last, then the earliest receipt, then the id', () => {
    const none = candidate({ holdingId: 'none', labelExpiry: null, onHand: quantity('1') });
    const b = candidate({ holdingId: 'b', receivedOn: '2026-02-01', onHand: quantity('1') });
    const a = candidate({ holdingId: 'a', receivedOn: '2026-02-01', onHand: quantity('1') });
    const old = candidate({ holdingId: 'old', receivedOn: '2026-01-01', onHand: quantity('1') });
    expect(taken([none, b, a, old], request({ need: '4' }))).toEqual([
      '1 of old',
      '1 of a',
      '1 of b',
      '1 of none',
    ]);
  });

  it('takes what was scanned first and notes that it was out of order', () => {
    const early = candidate({ holdingId: 'early', labelExpiry: '2026-06-30' });
    const late = candidate({ holdingId: 'late', labelExpiry: '2027-06-30', distance: null });
    const plan = chooseStock(
      [early, late],
      request({ need: '1', scanned: new Set(['lot of late']) }),
    );
    expect(plan.takes).toMatchObject([
      { lotId: 'lot of late', sureness: 'scanned', outOfOrder: true },
    ]);
    const inOrder = chooseStock([early, late], request({ need: '1', scanned: new Set(['early']) }));
    expect(inOrder.takes).toMatchObject([
      { lotId: 'lot of early', sureness: 'scanned', outOfOrder: false },
    ]);
  });

  it('notes a scanned sealed container as out of order though it is opened for the visit', () => {
    const common = {
      dispensing: 'multi-use',
      content: quantity('4'),
      onHand: quantity('4'),
    } as const;
    const early = candidate({ holdingId: 'early', ...common, labelExpiry: '2026-06-30' });
    const late = candidate({ holdingId: 'late', ...common, labelExpiry: '2027-06-30' });
    const plan = chooseStock(
      [early, late],
      request({ need: '1', scanned: new Set(['lot of late']) }),
    );
    expect(plan.takes).toMatchObject([{ lotId: 'lot of late', outOfOrder: true }]);
  });

  it('does not reach into another room unless that was scanned', () => {
    const elsewhere = candidate({ holdingId: 'elsewhere', distance: null });
    expect(
      formatQuantity(chooseStock([elsewhere], request({ need: '1' })).missing[0] ?? quantity('0')),
    ).toBe('1');
  });
});

describe('containers', () => {
  it('opens one container at a time, at the place of use, and leaves the rest sealed', () => {
    const box = candidate({
      holdingId: 'box',
      dispensing: 'multi-use',
      locationId: 'store',
      distance: 1,
      content: quantity('4'),
      onHand: quantity('8'),
      received: quantity('8'),
    });
    const plan = chooseStock([box], request({ need: '5', ifOpenedUseBy: () => '2026-11-04' }));
    expect(plan.openings).toMatchObject([
      { fromHoldingId: 'box', locationId: 'room', openedOn: '2026-05-04', useBy: '2026-11-04' },
      { fromHoldingId: 'box', locationId: 'room' },
    ]);
    const [first, second] = plan.openings;
    expect(formatQuantity(plan.holdings.get(first?.holdingId ?? '') ?? quantity('99'))).toBe('0');
    expect(formatQuantity(plan.holdings.get(second?.holdingId ?? '') ?? quantity('99'))).toBe('3');
    expect(plan.takes.map((t) => t.sureness)).toEqual(['assumed', 'assumed']);
  });

  it('says open container for what was opened before', () => {
    const opened = candidate({ holdingId: 'o', dispensing: 'multi-use', openedOn: '2026-05-01' });
    expect(chooseStock([opened], request({ need: '1' })).takes[0]?.sureness).toBe('open container');
  });

  it('charges single doses whole and counts what is missing in what is still needed', () => {
    const capsules = candidate({
      holdingId: 'capsules',
      dispensing: 'single-dose',
      content: quantity('0.25'),
      onHand: quantity('0.5'),
      received: quantity('5'),
      landedCost: money('110'),
    });
    const plan = chooseStock([capsules], request({ need: '0.3' }));
    expect(plan.charged.map(formatQuantity)).toEqual(['0.5']);
    expect(plan.missing.map(formatQuantity)).toEqual(['0']);
    expect(plan.takes.map((t) => formatMoney(t.cost))).toEqual(['11.00']);
    const short = chooseStock([capsules], request({ need: '0.6' }));
    expect(short.charged.map(formatQuantity)).toEqual(['0.5']);
    expect(short.missing.map(formatQuantity)).toEqual(['0.1']);
  });
});

describe('a need that would open very many containers', () => {
  it('is told apart instead of being worked out', () => {
    const specks = candidate({
      holdingId: 'specks',
      dispensing: 'multi-use',
      content: quantity('0.000001'),
      onHand: quantity('1000'),
      received: quantity('1000'),
    });
    expect(chooseStock([specks], request({ need: '1000' })).tooManyContainers).toBe(true);
    expect(chooseStock([specks], request({ need: '0.0005' })).tooManyContainers).toBe(false);
  });
});

describe('what is never taken (rule 4)', () => {
  const day = '2026-05-04';
  const blocked: [string, Partial<Candidate>][] = [
    ['expired', { labelExpiry: '2026-05-03' }],
    ['expired', { dispensing: 'multi-use', openedOn: '2026-01-06', useBy: '2026-05-03' }],
    ['recalled', { lotStatus: 'recalled' }],
    ['quarantined', { lotStatus: 'quarantined' }],
    ['not yet received', { receivedOn: '2026-05-05' }],
    ['opened later', { openedOn: '2026-05-05', useBy: '2026-08-01' }],
  ];
  it.each(blocked)('%s stock, even when it was scanned', (why, changes) => {
    const bad = candidate({ holdingId: 'bad', ...changes });
    expect(blockedOn(bad, day)).toBe(why);
    const plan = chooseStock([bad], request({ need: '1', day, scanned: new Set(['bad']) }));
    expect(plan.takes).toEqual([]);
    expect(plan.missing.map(formatQuantity)).toEqual(['1']);
  });

  it('still takes on the day of expiry, and for a visit dated before it', () => {
    const last = candidate({ holdingId: 'last', labelExpiry: '2026-05-04' });
    expect(taken([last], request({ need: '1', day: '2026-05-04' }))).toEqual(['1 of last']);
    expect(taken([last], request({ need: '1', day: '2026-04-30' }))).toEqual(['1 of last']);
  });

  it('settles an earlier use from goods received later, unsure of the lot', () => {
    const later = candidate({ holdingId: 'later', receivedOn: '2026-05-20' });
    const plan = chooseStock([later], request({ need: '1', evenIfReceivedLater: true }));
    expect(plan.takes).toMatchObject([{ occurredOn: '2026-05-20', sureness: 'not stated' }]);
  });
});

const amount = fc.bigInt({ min: 1n, max: 20_000_000n });
const arbitraryCandidate = fc.record({
  dispensing: fc.constantFrom('multi-use' as const, 'single-dose' as const, 'by-piece' as const),
  content: amount,
  onHand: amount,
  gone: fc.bigInt({ min: 0n, max: 9_000_000n }),
  cost: fc.bigInt({ min: 0n, max: 900_000_000n }),
  distance: fc.constantFrom(0, 1, 2, null),
  expiry: fc.constantFrom('2026-05-03', '2026-05-04', '2026-08-01', null),
  status: fc.constantFrom('released' as const, 'released' as const, 'recalled' as const),
  opened: fc.boolean(),
  consumableId: fc.constantFrom('paste', 'bond'),
});

type Raw = typeof arbitraryCandidate extends fc.Arbitrary<infer T> ? T : never;

function build(raw: readonly Raw[]): Candidate[] {
  return raw.map((r, i) =>
    candidate({
      holdingId: `h${i}`,
      consumableId: r.consumableId,
      dispensing: r.dispensing,
      content: quantityFromMicro(r.content),
      onHand: quantityFromMicro(r.onHand),
      received: quantityFromMicro(r.onHand + r.gone),
      outQuantity: quantityFromMicro(r.gone),
      landedCost: moneyFromMicro(r.cost),
      outCost: moneyFromMicro(multiplyRatio(r.cost, r.gone, r.onHand + r.gone, 'half-up')),
      distance: r.distance,
      labelExpiry: r.expiry,
      lotStatus: r.status,
      openedOn: r.opened && r.dispensing === 'multi-use' ? '2026-03-01' : null,
      useBy: r.opened && r.dispensing === 'multi-use' ? r.expiry : null,
    }),
  );
}

describe('for any stock and any needs', () => {
  const needs = fc.array(
    fc.record({ consumableId: fc.constantFrom('paste', 'bond'), quantity: amount }),
    { maxLength: 6 },
  );

  it('serves or names as missing all that is needed, and never takes more than is there', () => {
    fc.assert(
      fc.property(fc.array(arbitraryCandidate, { maxLength: 8 }), needs, (raw, wanted) => {
        const stock = build(raw);
        const plan = chooseStock(stock, {
          ...request({ need: '1' }),
          needs: wanted.map((n) => ({ ...n, quantity: quantityFromMicro(n.quantity) })),
        });
        wanted.forEach((need, i) => {
          const missing = plan.missing[i] ?? -1n;
          const got = plan.takes.filter((t) => t.need === i).reduce((s, t) => s + t.quantity, 0n);
          expect(missing >= 0n && missing <= need.quantity).toBe(true);
          expect(got + missing >= need.quantity).toBe(true);
          expect(plan.charged[i]).toBe(got);
        });
        for (const left of plan.holdings.values()) expect(left >= 0n).toBe(true);
        for (const layer of plan.layers.values()) {
          expect(layer.outQuantity <= layer.received).toBe(true);
          expect(layer.outCost >= 0n && layer.outCost <= layer.landedCost).toBe(true);
        }
        const before = stock.reduce((s, c) => s + c.onHand, 0n);
        const opened = new Set(plan.openings.map((o) => o.holdingId));
        const after =
          stock.reduce((s, c) => s + (plan.holdings.get(c.holdingId) ?? c.onHand), 0n) +
          [...opened].reduce((s, id) => s + (plan.holdings.get(id) ?? 0n), 0n);
        expect(before - after).toBe(plan.takes.reduce((s, t) => s + t.quantity, 0n));
      }),
      { numRuns: 2000 },
    );
  });

  it('takes only what is released, unexpired and within reach', () => {
    fc.assert(
      fc.property(fc.array(arbitraryCandidate, { maxLength: 8 }), needs, (raw, wanted) => {
        const stock = build(raw);
        const plan = chooseStock(stock, {
          ...request({ need: '1' }),
          needs: wanted.map((n) => ({ ...n, quantity: quantityFromMicro(n.quantity) })),
        });
        const byLot = new Map(stock.map((c) => [c.lotId, c]));
        for (const take of plan.takes) {
          const from = byLot.get(take.lotId);
          expect(from && blockedOn(from, '2026-05-04')).toBeUndefined();
          expect(from?.distance).not.toBeNull();
          if (from?.dispensing === 'single-dose') expect(take.quantity % from.content).toBe(0n);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
