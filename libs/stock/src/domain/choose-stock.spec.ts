import { describe, expect, it } from '@jest/globals';
import { formatMoney, formatQuantity, money, quantity } from '#lib/measure';
import { candidate, request } from './candidate.fixture.js';
import { blockedOn, type Candidate } from './candidate.js';
import { chooseStock, type IssueRequest } from './choose-stock.js';

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

  it('is sure of a lot that was scanned, though the book got it later', () => {
    const later = candidate({ holdingId: 'later', receivedOn: '2026-05-20' });
    const scanned = new Set(['later']);
    const plan = chooseStock([later], request({ need: '1', evenIfReceivedLater: true, scanned }));
    expect(plan.takes).toMatchObject([{ occurredOn: '2026-05-20', sureness: 'scanned' }]);
  });
});
