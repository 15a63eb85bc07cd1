import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { restoration, TestService, visitBody } from '../book/book.js';
import {
  asQuote,
  CHART,
  openPricedBook,
  type PricedBook,
  planBody,
  type Quote,
  quoteBody,
  type Way,
} from './pricing-book.js';

let service: TestService;
let s: PricedBook;

beforeAll(async () => {
  service = await TestService.start();
  s = await openPricedBook(service, 'quotes');
});

afterAll(() => service.stop());

async function quote(changes: object = {}): Promise<Quote> {
  const answer = await s.book.ask('POST', '/quotes', quoteBody(s, changes), 'manager');
  if (answer.status !== 200) throw new Error(answer.text);
  return asQuote(answer);
}

function way(from: Quote, name: string): Way {
  const found = from.ways.find((each) => each.way === name);
  if (!found) throw new Error(`There is no way ${name}`);
  return found;
}

describe('a quote', () => {
  it('sets the ways of doing the work side by side', async () => {
    const made = await quote();
    expect(made.ways.map((each) => each.way)).toEqual([
      'all in one visit',
      'insured first, cosmetic later',
      'insured only',
      'cosmetic only',
    ]);
    expect(made.restorations).toMatchObject([
      { feeCode: 'FRONT-1', fee: '250.00', allowedFee: '180.00', coverage: '0.8', recorded: 0 },
      { feeCode: 'LOOKS-1', fee: '320.00', allowedFee: '180.00', coverage: null },
    ]);
    expect(made.plan).toMatchObject({
      name: 'Meadow plan',
      deductibleLeft: '50.00',
      maximumLeft: '1000.00',
      leftAsOf: '2026-05-01',
      ceilingSource: 'Contract of 2024, section 7',
    });
    expect(made.unpriced).toEqual([]);
    // Bib 0.045; by tooth etchant 0.08 x 20/4.8; by restoration adhesive 0.03 x 22, one strip 0.07,
    // paste 0.06 x 18: 0.045 + 2 x 2.143333... = 4.33 in one visit, one more bib in two.
    const together = way(made, 'all in one visit');
    expect(together).toMatchObject({
      fee: '570.00',
      planPays: '104.00',
      patientPays: '396.00',
      writeOff: '70.00',
      material: '4.33',
      minutes: 90,
      contribution: '495.67',
      contributionPerHour: '330.45',
      chairCost: null,
      repeated: [],
    });
    const apart = way(made, 'insured first, cosmetic later');
    expect(apart).toMatchObject({ material: '4.38', planPays: '104.00', patientPays: '396.00' });
    expect(apart.repeated).toMatchObject([
      { consumable: { name: 'Patient bib' }, quantity: '1', cost: '0.05' },
    ]);
    expect(way(made, 'cosmetic only')).toMatchObject({ planPays: '0.00', patientPays: '320.00' });
  });

  it('costs what a preview of the same visit costs where nothing is in stock', async () => {
    const { restorations } = quoteBody(s);
    const preview = await s.book.done<{ materialCost: string }>('POST', '/visits/preview', {
      visitedOn: '2026-01-05',
      locationId: s.room,
      restorations,
    });
    expect(way(await quote(), 'all in one visit').material).toBe(preview.materialCost);
  });

  it('counts set-up time and the cost of chair time, and finds the lowest fees', async () => {
    const made = await quote({
      setUpMinutes: 10,
      chairMinuteCost: '2.5',
      targetContributionPerHour: '300',
    });
    const apart = way(made, 'insured first, cosmetic later');
    expect(apart).toMatchObject({ minutes: 110, chairCost: '275.00', repeatedMinutes: 10 });
    const [insured, cosmetic] = apart.lines;
    expect(insured).toMatchObject({ lowestFee: null, incomeLimit: '180.00', covered: true });
    // Its material and an hour at 300.
    expect(cosmetic).toMatchObject({ material: '2.19', lowestFee: '302.19', covered: false });
    const reached = await quote({
      setUpMinutes: 10,
      targetContributionPerHour: '300',
      restorations: [
        restoration(s, { tooth: '11', reason: 'cosmetic', minutes: 50, fee: '302.19' }),
      ],
    });
    expect(way(reached, 'all in one visit')).toMatchObject({ contributionPerHour: '300.00' });
  });

  it("takes the practice's own rate of the day", async () => {
    expect((await quote()).chairMinuteCost).toBeNull();
    // 560,000 for 700,000 minutes: 0.80 each (Kaplan & Anderson, time-driven costing, 2004).
    const rate = { validFrom: '2026-05-04', yearlyCost: '560000', practicalMinutes: 700000 };
    await s.book.done('POST', '/cost-rates', rate);
    const made = await quote();
    expect(made.chairMinuteCost).toBe('0.80');
    expect(way(made, 'all in one visit')).toMatchObject({
      chairCost: '72.00',
      afterChairTime: '423.67',
    });
    const balance = { deductibleLeft: '50', maximumLeft: '1000' };
    expect((await quote({ quotedOn: '2026-05-03', balance })).chairMinuteCost).toBeNull();
  });

  it('gives a range only from enough recorded restorations', async () => {
    const before = way(await quote(), 'insured only');
    expect(before).toMatchObject({ recorded: 0, materialRange: null, contributionRange: null });
    expect(before.rangeMissing).toMatch(/fewer than 5/);
    for (const attempts of [1, 1, 1, 1, 2]) {
      await s.book.done('POST', '/visits', {
        ...visitBody(s),
        restorations: [restoration(s, { attempts })],
      });
    }
    const after = way(await quote(), 'insured only');
    // One in five was done again, which takes another 1.08 of paste.
    expect(after).toMatchObject({ recorded: 5, rangeMissing: null });
    expect(after.materialRange).toEqual({
      p10: expect.any(String),
      p50: expect.any(String),
      p90: expect.any(String),
    });
    const { p10, p90 } = after.materialRange as { p10: string; p90: string };
    expect(Number(p90) - Number(p10)).toBeCloseTo(1.08, 1);
    expect(way(await quote(), 'cosmetic only').materialRange).toBeNull();
    expect(await quote()).toEqual(await quote());
  });

  it('covers cosmetic work only by a term of the fee that has a note', async () => {
    const name = 'Generous plan';
    const { id } = await s.book.done('POST', '/fee-plans', planBody({ name, deductible: '0' }));
    const balance = { deductibleLeft: '0', maximumLeft: '1000' };
    const path = `/fee-plans/${id}/terms`;
    const from = { validFrom: '2026-01-01' };
    await s.book.done('POST', path, { ...from, feeClass: 'basic', coverage: '1' });
    const plain = await quote({ planId: id, balance });
    expect(way(plain, 'cosmetic only')).toMatchObject({ planPays: '0.00' });
    await s.book.done('POST', path, {
      ...from,
      feeId: s.cosmeticFee,
      coverage: '0.5',
      reasons: ['cosmetic'],
      cosmeticNote: 'Letter of 2 May 2026',
    });
    const noted = await quote({ planId: id, balance });
    expect(way(noted, 'cosmetic only')).toMatchObject({ planPays: '160.00' });
  });

  it('works without a plan, and with fees stated in place', async () => {
    const made = await quote({
      planId: null,
      restorations: [restoration(s, { fee: '200', reason: 'wear' })],
    });
    expect(made.plan).toBeNull();
    expect(made.ways).toHaveLength(1);
    expect(made.ways[0]).toMatchObject({ patientPays: '200.00', planPays: '0.00' });
  });

  it('that cannot be worked out is refused by its field', async () => {
    const nobody = '01900000-0000-7000-8000-000000000000';
    const one = (changes: object) => ({ restorations: [restoration(s, changes)] });
    const cases: [object, unknown[]][] = [
      [{ chartReference: 'C-7' }, [422, 'balance']],
      [{ chartReference: null }, [422, 'balance']],
      [{ quotedOn: '2026-04-30' }, [422, 'balance']],
      [{ balance: { deductibleLeft: '51', maximumLeft: '1' } }, [422, 'balance.deductibleLeft']],
      [{ balance: { deductibleLeft: '5' } }, [422, 'balance.maximumLeft']],
      [{ planId: null, balance: { deductibleLeft: '5' } }, [422, 'planId']],
      [{ planId: nobody }, [422, 'planId']],
      [{ locationId: nobody }, [422, 'locationId']],
      [{ restorations: [] }, [400, 'restorations']],
      [one({ reason: 'wear' }), [422, 'restorations[0].fee']],
      [one({ feeCode: 'NO-SUCH' }), [422, 'restorations[0].feeCode']],
      [one({ fee: '1.001' }), [422, 'restorations[0].fee']],
      [one({ tooth: '19' }), [422, 'restorations[0].tooth']],
      [one({ templateId: nobody }), [422, 'restorations[0].templateId']],
      [one({ shades: [nobody] }), [422, 'restorations[0].shades[0]']],
      [{ targetContributionPerHour: '-1' }, [400, 'targetContributionPerHour']],
      [{ patientName: 'x' }, [400, 'patientName']],
    ];
    for (const [changes, expected] of cases) {
      const answer = await s.book.ask('POST', '/quotes', quoteBody(s, changes));
      const errors = (answer.body.errors ?? []) as { field: string }[];
      expect([answer.status, ...errors.map(({ field }) => field)]).toEqual(expected);
    }
    expect((await s.book.ask('POST', '/quotes', quoteBody(s), 'assistant')).status).toBe(403);
    expect(CHART).toBe('C-2001');
  });
});

describe('a quote of what a visit can be planned with', () => {
  let numbed: object;

  beforeAll(async () => {
    const cartridge = await s.book.consumable('Cartridge', 'Anaesthetic', 'piece');
    await s.book.presentation(cartridge, 'by-piece', 50, '1', { listPrice: '25' });
    const line = (consumableId: string, driver: string, dispensed: string, more: object = {}) => ({
      ...{ consumableId, driver, placed: '0', dispensed },
      ...more,
    });
    const templateId = await s.book.template('Numbed front tooth', [
      line(s.bib.id, 'visit', '1'),
      line(cartridge, 'front segment or quadrant', '1'),
      line(s.paste.id, 'mm3', '0.002', { everyAttempt: true }),
    ]);
    numbed = { templateId, shades: [], fee: '200', volumeMm3: '20' };
  });

  const made = (...more: object[]) =>
    quote({ restorations: more.map((each) => restoration(s, { ...numbed, ...each })) });
  const looks = { tooth: '11', reason: 'cosmetic' };

  // Bib 0.045, cartridge 25 / 50, paste 20 x 0.002 g at 18.
  it('counts retakes, and leaves out anaesthetic where it is not wanted', async () => {
    const material = async (more: object) =>
      way(await made(more), 'all in one visit').material as string;
    expect(await material({})).toBe('1.27');
    expect(await material({ attempts: 3 })).toBe('2.71');
    expect(await material({ withoutAnaesthetic: true })).toBe('0.77');
    expect((await made({ attempts: 3, withoutAnaesthetic: true })).restorations).toMatchObject([
      { attempts: 3, withoutAnaesthetic: true, volumeMm3: '20', volumeSource: 'entered' },
    ]);
  });

  it('keeps the anaesthetic of a visit as long as one of its restorations needs it', async () => {
    const repeated = (of: Quote) =>
      way(of, 'insured first, cosmetic later').repeated.map(({ consumable }) => consumable.name);
    expect(repeated(await made({}, looks)).sort()).toEqual(['Cartridge', 'Patient bib']);
    const bare = await made({}, { ...looks, withoutAnaesthetic: true });
    expect(repeated(bare)).toEqual(['Patient bib']);
    expect(way(bare, 'all in one visit').material).toBe('1.99');
    expect(way(bare, 'cosmetic only').material).toBe('0.77');
  });

  it('costs what the visit planner says of the same, measured, twice and without', async () => {
    const sides = { volumeMm3: null, lengthMm: '4', widthMm: '3', depthMm: '2.5' };
    for (const more of [{}, { attempts: 2 }]) {
      const restorations = [{ ...numbed, ...sides, ...more, fee: undefined }];
      for (const withoutAnaesthetic of [false, true]) {
        const preview = await s.book.done<{ materialCost: string }>('POST', '/visits/preview', {
          ...{ visitedOn: '2026-01-05', locationId: s.room, withoutAnaesthetic },
          restorations: restorations.map((each) => restoration(s, each)),
        });
        const quoted = await made({ ...sides, ...more, withoutAnaesthetic });
        expect(quoted.restorations).toMatchObject([{ volumeSource: 'dimensions' }]);
        expect(way(quoted, 'all in one visit').material).toBe(preview.materialCost);
      }
    }
  });

  it('is refused by its field where that does not fit', async () => {
    const cases: [object, string[]][] = [
      [{ withoutAnaesthetic: 'no' }, ['restorations[0].withoutAnaesthetic']],
      [{ attempts: 11 }, ['restorations[0].attempts']],
      [{ lengthMm: '0' }, ['restorations[0].lengthMm']],
      [{ lengthMm: '4', widthMm: '3', depthMm: '2' }, ['restorations[0].volumeMm3']],
      [{ volumeMm3: null, lengthMm: '4' }, ['restorations[0].widthMm', 'restorations[0].depthMm']],
    ];
    for (const [more, fields] of cases) {
      const restorations = [restoration(s, { ...numbed, ...more })];
      const answer = await s.book.ask('POST', '/quotes', quoteBody(s, { restorations }));
      const errors = (answer.body.errors ?? []) as { field: string }[];
      expect(errors.map(({ field }) => field)).toEqual(fields);
    }
  });
});
