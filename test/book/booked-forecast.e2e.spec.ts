import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import {
  type Forecast,
  openPlanningBook,
  type PlanningBook,
  type Proposals,
  TODAY,
} from '../purchasing/planning-book.js';
import { SetClock } from '../purchasing/post-boxes.js';
import { TestService } from './book.js';

// Monday to Thursday the practice sees one patient a day, sometimes two, and uses a bib for each.
const clock = new SetClock(new Date(`${TODAY}T06:00:00Z`));
let service: TestService;
let s: PlanningBook;

beforeAll(async () => {
  service = await TestService.start({ clock });
  s = await openPlanningBook(service, 'ahead');
});

afterAll(async () => {
  await service.stop();
});

interface BookedForecast extends Forecast {
  readonly booked: {
    readonly keptShare: string;
    readonly days: readonly {
      readonly day: string;
      readonly visits: number;
      readonly booked: string;
      readonly usual: string;
      readonly replaced: string;
      readonly expected: string;
    }[];
    readonly sentence: string;
  } | null;
}

interface RunOut {
  readonly kind: string;
  readonly consumable: { readonly id: string };
  readonly figures: readonly { readonly name: string; readonly value: string }[];
  readonly bookedVisits: readonly { readonly id: string; readonly chartReference: string | null }[];
}

const forecast = (id: string, query = '') =>
  s.book.done<BookedForecast>('GET', `/reorder/forecasts/${id}${query}`);
const mean = (of: Forecast, days: number) =>
  Number(of.horizons.find((each) => each.days === days)?.mean);
const book = async (day: string, changes: object = {}) =>
  (
    await s.book.done('POST', '/booked-visits', {
      ...{ day, restorations: [{ templateId: s.template }], ...changes },
    })
  ).id ?? '';
const drop = (id: string) =>
  s.book.done('POST', `/booked-visits/${id}/dropping`, { version: 1, note: 'of the test' });
const diary = (wholeDay: boolean, fullDays = 0) =>
  s.book.done('PUT', '/reorder/settings/booked-visits', { wholeDay, fullDays });
const runOut = async (id: string) =>
  (await s.book.done<{ alerts: RunOut[] }>('GET', '/reorder/alerts')).alerts.find(
    (alert) => alert.kind === 'runs out before delivery' && alert.consumable.id === id,
  );

describe('the forecast with booked visits', () => {
  it('is the one without them until something is booked, and again when it is dropped', async () => {
    const before = await forecast(s.bib.id);
    expect(before.booked).toBeNull();
    const proposed = await s.book.done<Proposals>('GET', '/reorder/proposals');
    const id = await book('2026-05-05', { alike: 9 });
    const with9 = await forecast(s.bib.id);
    expect(with9.horizons).not.toEqual(before.horizons);
    await drop(id);
    expect(await forecast(s.bib.id)).toEqual(before);
    expect(await s.book.done('GET', '/reorder/proposals')).toEqual(proposed);
  });

  it('shows by day what is booked and what of the usual use that stands for', async () => {
    const before = await forecast(s.bib.id);
    const id = await book('2026-05-05', { alike: 9 });
    const after = await forecast(s.bib.id);
    const [day] = after.booked?.days ?? [];
    // Nine visits, nine of ten kept, a bib each.
    expect(day).toMatchObject({ day: '2026-05-05', visits: 9, booked: '8.1', expected: '8.1' });
    expect(after.booked?.keptShare).toBe('0.9');
    expect(day?.replaced).toBe(day?.usual);
    expect(Number(day?.usual)).toBeGreaterThan(1);
    const more = mean(after, 7) - mean(before, 7);
    expect(Math.abs(more - (8.1 - Number(day?.usual)))).toBeLessThan(0.35);
    expect(after.booked?.sentence).toMatch(/^9 visits are booked until 2026-05-05/);
    // The proposal asks for what the bookings need as well.
    const reckoned = async () => {
      const { orders } = await s.book.done<Proposals>('GET', '/reorder/proposals');
      const line = orders.flatMap((o) => o.lines).find((l) => l.consumable.id === s.bib.id);
      return Number(line?.reorderPoint ?? 0);
    };
    const busy = await reckoned();
    await drop(id);
    expect(busy).toBeGreaterThan(await reckoned());
  });

  it('says nothing of what no template of a booking names', async () => {
    const before = await forecast(s.expiring.id);
    const id = await book('2026-05-05');
    expect(await forecast(s.expiring.id)).toEqual(before);
    await drop(id);
  });

  it('needs less where the whole day is booked and it is less than usual', async () => {
    const before = await forecast(s.bib.id);
    await diary(true, 4);
    expect(await forecast(s.bib.id)).toEqual(before);
    const ids = await Promise.all(['2026-05-04', '2026-05-05'].map((day) => book(day)));
    const after = await forecast(s.bib.id);
    expect(after.booked?.days.map((each) => [each.day, each.booked, each.expected])).toEqual([
      ['2026-05-04', '0.9', '0.9'],
      ['2026-05-05', '0.9', '0.9'],
    ]);
    expect(mean(after, 7)).toBeLessThan(mean(before, 7) - 0.4);
    // Afterwards the diary is still filling up: the share of a usual day that is booked counts.
    const later = await book('2026-05-12');
    const day = (await forecast(s.bib.id)).booked?.days.find((each) => each.day === '2026-05-12');
    expect(Number(day?.replaced)).toBeLessThan(Number(day?.usual));
    expect(Number(day?.replaced)).toBeGreaterThan(0.4 * Number(day?.usual));
    for (const id of [...ids, later]) await drop(id);
    await diary(false);
    expect(await forecast(s.bib.id)).toEqual(before);
  });

  it('counts at a place only what is booked there', async () => {
    const id = await book('2026-05-05', { alike: 5, locationId: s.room });
    expect((await forecast(s.bib.id, `?locationId=${s.room}`)).booked?.days).toHaveLength(1);
    expect((await forecast(s.bib.id, `?locationId=${s.otherRoom}`)).booked).toBeNull();
    await drop(id);
  });

  it('refuses settings that make no sense', async () => {
    const wrong = await s.book.ask('PUT', '/reorder/settings/booked-visits', {
      ...{ wholeDay: true, fullDays: 61 },
    });
    expect(wrong.status).toBe(400);
    expect(JSON.stringify(wrong.body)).toContain('fullDays');
  });
});

describe('the alert before a delivery', () => {
  it('opens when booked visits need more than is there, names them, and closes again', async () => {
    // Four boxes of a hundred strips, and half a year of use: more than 200 are left.
    expect(await runOut(s.strip.id)).toBeUndefined();
    const id = await book('2026-05-05', {
      ...{ chartReference: 'C-77', restorations: [{ templateId: s.template, tooth: '21' }] },
    });
    const others = await Promise.all([1, 2].map(() => book('2026-05-06', { alike: 200 })));
    const alert = await runOut(s.strip.id);
    const named = new Set(alert?.bookedVisits.map((visit) => visit.id));
    expect(others.filter((each) => !named.has(each))).toEqual([]);
    const value = (name: string) => alert?.figures.find((each) => each.name === name)?.value;
    expect(Number(value('use until delivery'))).toBeGreaterThan(300);
    expect(value('days until delivery')).toBe('3');
    expect(Number(value('chance'))).toBeGreaterThan(90);
    await Promise.all([id, ...others].map((each) => drop(each)));
    expect(await runOut(s.strip.id)).toBeUndefined();
  });
});
