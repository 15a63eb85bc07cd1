import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import {
  deliveryLine,
  lineOf,
  openSmallBook,
  openStockedBook,
  postVisit,
  restoration,
  TestService,
  type Visit,
  visitBody,
} from './book.js';
import { expectRulesHold } from './invariants.js';

// What a visit records beyond its templates: minutes of chair and assistants, measured cavities, work
// done again, visits without anaesthetic.

let service: TestService;
let owner: pg.Pool;
let books = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 2 });
});

afterAll(async () => {
  await expectRulesHold(owner);
  await owner.end();
  await service.stop();
});

const nextPrefix = () => {
  books += 1;
  return `depth${books}`;
};

const stocked = () => openStockedBook(service, nextPrefix());

interface Timed {
  readonly restorations: { minutes: number; assistantMinutes: number | null }[];
}

describe('minutes', () => {
  it('are those of the template, or of the visit, or of a restoration', async () => {
    const s = await stocked();
    const minutesOf = async (changes: object) => {
      const visit = (await postVisit(s, changes)) as unknown as Timed;
      return visit.restorations.map((r) => [r.minutes, r.assistantMinutes]);
    };
    expect(await minutesOf({})).toEqual([[40, 40]]);
    const two = [restoration(s), restoration(s, { tooth: '11', minutes: 25 })];
    expect(await minutesOf({ restorations: two, minutes: 70, assistantMinutes: 50 })).toEqual([
      [45, 25],
      [25, 25],
    ]);
    const answer = await s.book.ask(
      'POST',
      '/visits',
      visitBody(s, { restorations: two, minutes: 20 }),
    );
    expect([answer.status, answer.body.errors]).toMatchObject([422, [{ field: 'minutes' }]]);
  });

  it('of assistants are planned by the template and cost what its rate says', async () => {
    const s = await stocked();
    const template = await s.book.done('POST', '/procedure-templates', {
      name: 'With an assistant for a while',
      minutes: 30,
      assistantMinutes: 12,
      lines: [{ consumableId: s.bib.id, driver: 'visit', placed: '0', dispensed: '1' }],
    });
    const rates = {
      validFrom: '2026-01-01',
      yearlyCost: '168000',
      practicalMinutes: 192_000,
      assistantRate: '0.55',
    };
    const refused = await s.book.ask('POST', '/cost-rates', {
      ...rates,
      assistantRate: null,
      assistantPracticalMinutes: 96_000,
    });
    expect([refused.status, refused.body.errors]).toMatchObject([
      400,
      [{ field: 'assistantRate' }],
    ]);
    await s.book.done('POST', '/cost-rates', { ...rates, assistantPracticalMinutes: 96_000 });
    await postVisit(s, {
      restorations: [restoration(s, { templateId: template.id, shades: [] })],
    });
    const report = await s.book.done<Record<string, unknown>>(
      'GET',
      '/reports/chair-time?from=2026-01-01&to=2026-12-31',
    );
    expect(report.totals).toMatchObject({
      minutes: 30,
      cost: '26.25',
      assistantMinutes: 12,
      assistantCost: '6.60',
      assistantMinutesWithoutRate: 0,
    });
    expect(report.assistantCapacity).toEqual({
      minutes: 96_000,
      cost: '52800.00',
      usedMinutes: 12,
      usedCost: '6.60',
      usedShare: '0.0001',
      idleMinutes: 95_988,
      idleCost: '52793.40',
    });
  });
});

interface Measured {
  readonly restorations: Record<string, unknown>[];
}

describe('a measured cavity', () => {
  it('takes its volume and layers from length, width and depth', async () => {
    const s = await stocked();
    const lines = [
      { consumableId: s.paste.id, driver: 'mm3', placed: '0.002', dispensed: '0.003' },
      { consumableId: s.strip.id, driver: 'layer', placed: '0', dispensed: '1' },
    ];
    const templateId = await s.book.template('By volume and layer', lines);
    // The study cavity of 4 x 5 x 4 mm: 80 mm3 in two layers (Braz Oral Res, micro-CT study).
    const box = { tooth: '36', surfaces: 'O', cavityClass: 'I', templateId, shades: [] };
    const measured = { ...box, lengthMm: '4', widthMm: '5', depthMm: '4' };
    const visit = await postVisit(s, { restorations: [restoration(s, measured)] });
    const again = await s.book.done<Measured>('GET', `/visits/${visit.id}`);
    for (const each of [visit as unknown as Measured, again]) {
      expect(each.restorations[0]).toMatchObject({
        volumeMm3: '80',
        volumeSource: 'dimensions',
        lengthMm: '4',
        widthMm: '5',
        depthMm: '4',
        layers: 2,
      });
    }
    expect(lineOf(visit, s.paste.id).placed).toBe('0.16');
    expect(lineOf(visit, s.strip.id).dispensed).toBe('2');
    const planned = (await postVisit(s, { restorations: [restoration(s, box)] })) as unknown;
    expect((planned as Measured).restorations[0]).toMatchObject({
      volumeMm3: '30',
      volumeSource: 'planning value',
      lengthMm: null,
    });
    const half = { restorations: [restoration(s, { ...box, lengthMm: '4', depthMm: '2' })] };
    const answer = await s.book.ask('POST', '/visits', visitBody(s, half));
    expect([answer.status, answer.body.errors]).toMatchObject([
      422,
      [{ field: 'restorations[0].widthMm' }],
    ]);
  });
});

describe('work that is done again', () => {
  it('names the first, costs a retake as a whole, and is reported as such', async () => {
    const s = await stocked();
    const first = await postVisit(s);
    const redoOf = first.restorations[0]?.id ?? '';
    const earlier = await s.book.ask(
      'GET',
      '/visits/earlier-restorations?chartReference=c-1001',
      undefined,
      'assistant',
    );
    expect(earlier.body.items).toMatchObject([
      { restorationId: redoOf, tooth: '21', surfaces: 'M', reason: 'decay', redone: false },
    ]);
    const redo = await postVisit(s, {
      visitedOn: '2026-05-20',
      restorations: [restoration(s, { redoOf }), restoration(s, { tooth: '11' })],
    });
    const [again, other] = redo.restorations;
    expect(again?.cost.retake).toBe(again?.cost.total);
    expect([other?.cost.retake, redo.retakeCost]).toEqual(['0.00', again?.cost.total]);
    const link = { restorationId: again?.id, visitId: redo.id, visitedOn: '2026-05-20' };
    const of = await s.book.done<Measured>('GET', `/visits/${first.id}`);
    expect(of.restorations[0]).toMatchObject({ redoOf: null, redoneBy: [link] });
    const waste = await s.book.done<Record<string, unknown>>('GET', '/reports/waste');
    expect(waste.retakes).toEqual({ restorations: 1, extraAttempts: 1, cost: redo.retakeCost });
    const costs = await s.book.done<{ totals: object }>('GET', '/reports/restoration-costs');
    expect(costs.totals).toMatchObject({ retakeCost: redo.retakeCost });
    const variances = await s.book.done<{
      rows: {
        restorationId: string;
        standardCost: string;
        retakeCost: string;
        actualCost: string;
      }[];
    }>('GET', '/reports/variances?groupBy=restoration');
    const row = variances.rows.find((each) => each.restorationId === again?.id);
    expect(row).toMatchObject({ standardCost: '0.00', retakeCost: row?.actualCost });
  });

  it('stays a retake when a shortfall of it is settled', async () => {
    const s = await openSmallBook(service, nextPrefix());
    const first = await postVisit(s);
    const redo = await postVisit(s, {
      restorations: [restoration(s, { redoOf: first.restorations[0]?.id })],
    });
    await s.book.deliver(s.supplier, '2026-05-10', [deliveryLine(s.paste, s.store, 1, '80')]);
    const now = await s.book.done<Visit>('GET', `/visits/${redo.id}`);
    expect(now.retakeCost).toBe(now.materialCost);
  });

  it('is refused for another tooth, another chart, a reversed visit, and what is not there', async () => {
    const s = await stocked();
    const first = await postVisit(s);
    const redoOf = first.restorations[0]?.id ?? '';
    const refused = async (changes: object, of: object = {}) => {
      const body = visitBody(s, { restorations: [restoration(s, { redoOf, ...of })], ...changes });
      const answer = await s.book.ask('POST', '/visits', body);
      expect([answer.status, answer.body.errors]).toMatchObject([
        422,
        [{ field: 'restorations[0].redoOf' }],
      ]);
      return (answer.body.errors as { message: string }[])[0]?.message;
    };
    expect(await refused({}, { tooth: '11' })).toContain('another tooth');
    expect(await refused({ chartReference: 'C-7' })).toContain('another chart');
    expect(await refused({ visitedOn: '2026-05-01' })).toContain('later restoration');
    expect(await refused({}, { redoOf: first.id })).toContain('restoration');
    await s.book.done('POST', `/visits/${first.id}/reversal`, { note: 'Entered wrongly.' });
    expect(await refused({})).toContain('reversed');
  });
});

describe('a visit without anaesthetic', () => {
  it('leaves out what the template has for it, by category or as it says', async () => {
    const s = await stocked();
    const cartridge = await s.book.consumable('Cartridge', 'Anaesthetic', 'piece');
    const gel = await s.book.consumable('Numbing gel', 'Gels', 'g');
    const line = (consumableId: string, driver: string, more: object = {}) => ({
      ...{ consumableId, driver, placed: '0', dispensed: '1' },
      ...more,
    });
    const templateId = await s.book.template('Edge bonding', [
      line(cartridge, 'front segment or quadrant'),
      line(gel, 'front segment or quadrant', { anaesthetic: true }),
      line(s.bib.id, 'visit'),
    ]);
    const restorations = [restoration(s, { templateId, shades: [], reason: 'cosmetic' })];
    const used = (visit: Visit) => visit.usage.map((each) => each.consumable.name);
    expect(used(await postVisit(s, { restorations }))).toEqual([
      'Cartridge',
      'Numbing gel',
      'Patient bib',
    ]);
    const without = await postVisit(s, { restorations, withoutAnaesthetic: true });
    expect(used(without)).toEqual(['Patient bib']);
    expect(await s.book.done('GET', `/visits/${without.id}`)).toMatchObject({
      withoutAnaesthetic: true,
    });
  });
});

describe('template against reality', () => {
  it('suggests a version that keeps sharing, anaesthesia and the time of assistants', async () => {
    const s = await stocked();
    const capsule = { consumableId: s.capsule.id, driver: 'restoration', placed: '0.08' };
    const template = await s.book.done('POST', '/procedure-templates', {
      name: 'Said and done',
      minutes: 30,
      assistantMinutes: 20,
      lines: [{ ...capsule, dispensed: '0.1', anaesthetic: true }],
    });
    const each = { templateId: template.id, shades: [] };
    for (let n = 0; n < 3; n += 1) {
      await postVisit(s, {
        assistantMinutes: 60,
        restorations: [restoration(s, each), restoration(s, { ...each, tooth: '11' })],
        usage: [1, 2].map((r) => ({ line: `r${r}/a1/1/${s.capsule.id}`, dispensed: '0.12' })),
      });
    }
    const path = `/reports/template-usage/${template.id}/suggestion`;
    const found = await s.book.done<Record<string, unknown>>('GET', path);
    expect(found).toMatchObject({
      assistantMinutes: 20,
      usedAssistantMinutes: 30,
      lines: [{ sentence: 'The template says 0.1 g, the last 6 used 0.12 g.' }],
      suggestedVersion: {
        minutes: 30,
        assistantMinutes: 30,
        lines: [{ dispensed: '0.12', sharesDose: true, anaesthetic: true }],
      },
    });
    const versions = `/procedure-templates/${template.id}/versions`;
    const written = await s.book.done('POST', versions, found.suggestedVersion);
    expect(written).toMatchObject({ version: 2, assistantMinutes: 30 });
  });
});
