import { beforeAll, describe, expect, it } from '@jest/globals';
import { addDays, addMonths } from '#lib/platform';
import { isWorkday, weekdayOf } from './calendar.js';
import { CATALOGUE, consumableOf, itemNumber } from './catalogue.js';
import { BACK_ORDERED } from './ordering.js';
import { PEOPLE, PLACES } from './practice.js';
import { buildScenario, type Scenario } from './scenario.js';
import { LAST_VISIT } from './simulate.js';
import type { Step, StepKind, StepOf } from './steps.js';
import { TEMPLATES } from './templates.js';

const TODAY = '2026-11-25';
/** A leap day, a Saturday after New Year, a day when the practice is closed, a Monday in summer. */
const OTHER_DAYS = ['2028-02-29', '2027-01-02', '2026-08-14', '2027-07-05'];

function all<K extends StepKind>(scenario: Scenario, kind: K): StepOf<K>[] {
  return scenario.steps.filter(
    (step: Step): step is Extract<Step, StepOf<K>> => step.kind === kind,
  );
}

function share(part: number, whole: number): number {
  return part / whole;
}

describe('the master data of the demo', () => {
  it('has somebody for every role, with a name and a password that are easy to type', () => {
    const roles = new Set(PEOPLE.map((person) => person.role));
    expect([...roles].toSorted()).toEqual(['assistant', 'auditor', 'dentist', 'manager', 'owner']);
    expect(PEOPLE.filter((person) => person.role === 'dentist')).toHaveLength(2);
    expect(PEOPLE[0]?.role).toBe('owner');
    for (const { password, signInName } of PEOPLE) {
      expect(password.length).toBeGreaterThanOrEqual(10);
      expect(signInName).toMatch(/^[a-z0-9]+$/);
    }
  });

  it('has a store, a fridge and two rooms that draw from the store', () => {
    const rooms = Object.values(PLACES).filter((place) => place.kind === 'room');
    expect(rooms.map((room) => room.parent)).toEqual(['store', 'store']);
    expect(PLACES.fridge.kind).toBe('fridge');
  });

  it('has 60 or more consumables in sensible categories, used up in all three ways', () => {
    expect(CATALOGUE.length).toBeGreaterThanOrEqual(60);
    expect(new Set(CATALOGUE.map((row) => row.category)).size).toBeGreaterThanOrEqual(15);
    const ways = new Set(CATALOGUE.map((row) => row.packs[0].dispensing));
    expect([...ways].toSorted()).toEqual(['by-piece', 'multi-use', 'single-dose']);
    expect(CATALOGUE.filter((row) => row.life).length).toBeGreaterThanOrEqual(5);
    const names = CATALOGUE.map((row) => [row.name, row.shade, row.size, row.grit].join('/'));
    expect(new Set(names).size).toBe(names.length);
    for (const { packs } of CATALOGUE)
      for (const { price } of packs) expect(price).toBeGreaterThan(1);
  });

  it('has eight or more templates, some with a second version that differs', () => {
    expect(TEMPLATES.length).toBeGreaterThanOrEqual(8);
    const second = TEMPLATES.filter((template) => template.versions.length === 2);
    expect(second.length).toBeGreaterThanOrEqual(3);
    for (const { versions } of second) expect(versions[1]).not.toEqual(versions[0]);
    const named = TEMPLATES.flatMap((t) => t.versions.flatMap((v) => v.lines));
    for (const { consumable } of named) if (consumable !== null) consumableOf(consumable);
  });

  it('gives packs a number with a right check digit', () => {
    // Weights 3 and 1 from the left of 14 digits: the sum is a multiple of ten.
    const digits = [...itemNumber(731)].map(Number);
    expect(digits).toHaveLength(14);
    expect(digits.reduce((sum, d, i) => sum + d * (i % 2 === 0 ? 3 : 1), 0) % 10).toBe(0);
  });
});

describe.each([TODAY, ...OTHER_DAYS])('the demo up to %s', (today) => {
  let scenario: Scenario;
  let visits: StepOf<'visit'>[];

  beforeAll(() => {
    scenario = buildScenario(today);
    visits = all(scenario, 'visit');
  });

  it('has 4,000 or more visits on weekdays of the last 18 months, in order of their days', () => {
    expect(visits.length).toBeGreaterThanOrEqual(4000);
    const first = addMonths(today, -18);
    for (const { date, payload } of visits) {
      expect(payload.visitedOn).toBe(date);
      expect(date >= first && date <= today && weekdayOf(date) <= 5).toBe(true);
    }
    const dates = scenario.steps.map((step) => step.date);
    expect(dates).toEqual(dates.toSorted());
    expect(addDays(visits.at(-1)?.date ?? '', 14) > today).toBe(true);
  });

  it('names every step once, and ends with the visit by which a finished book is known', () => {
    const keys = scenario.steps.map((step) => step.key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(Math.max(...keys.map((key) => key.length))).toBeLessThan(150);
    const last = scenario.steps.at(-1);
    expect(last?.kind === 'visit' && last.payload.id).toBe(LAST_VISIT);
    expect(new Set(visits.map((visit) => visit.payload.id)).size).toBe(visits.length);
  });

  it('mixes work for health and for looks, often several restorations, sometimes both', () => {
    const works = visits.map(({ payload }) => payload.restorations);
    const several = works.filter((list) => list.length > 1).length;
    const cosmetic = works.filter((list) => list.every((r) => r.reason === 'cosmetic')).length;
    const both = works.filter(
      (list) =>
        list.some((r) => r.reason === 'cosmetic') && list.some((r) => r.reason !== 'cosmetic'),
    ).length;
    expect(share(several, works.length)).toBeGreaterThan(0.3);
    expect(share(several, works.length)).toBeLessThan(0.7);
    expect(share(cosmetic, works.length)).toBeGreaterThan(0.15);
    expect(share(both, works.length)).toBeGreaterThan(0.1);
    expect(share(both, works.length)).toBeLessThan(0.35);
    const reasons = new Set(works.flatMap((list) => list.map((r) => r.reason)));
    expect([...reasons].toSorted()).toEqual(['cosmetic', 'decay', 'fracture', 'wear']);
    const templates = new Set(works.flatMap((list) => list.map((r) => r.templateId)));
    expect(templates.size).toBe(TEMPLATES.length);
    for (const list of works) expect(new Set(list.map((r) => r.tooth)).size).toBe(list.length);
  });

  it('has retakes in two to five percent of the front restorations', () => {
    const done = visits.flatMap((visit) => visit.payload.restorations);
    const front = done.filter((r) => Number(r.tooth) % 10 <= 3);
    const again = front.filter((r) => r.attempts === 2);
    expect(share(again.length, front.length)).toBeGreaterThan(0.012);
    expect(share(again.length, front.length)).toBeLessThan(0.05);
    const reasons = all(scenario, 'writeOff').map((step) => step.payload.reason);
    expect(reasons.filter((reason) => reason === 'wrong shade opened').length).toBeGreaterThan(3);
    expect(reasons).toContain('expired');
    expect(reasons).toContain('after-opening limit');
  });

  it('has deliveries every few weeks per supplier, with freight and rising prices', () => {
    const deliveries = all(scenario, 'delivery').map((step) => step.payload);
    expect(deliveries.length).toBeGreaterThan(100);
    expect(deliveries.filter((d) => Number(d.freight) > 0).length).toBeGreaterThan(50);
    const lines = deliveries.flatMap((d) => d.lines.map((line) => ({ ...line, on: d.receivedOn })));
    const gloves = lines.filter((line) => line.consumable === 'gloves-m');
    expect(gloves.length).toBeGreaterThan(6);
    expect(Number(gloves.at(-1)?.packPrice)).toBeGreaterThan(Number(gloves[0]?.packPrice) * 1.04);
    expect(lines.filter((line) => line.lotNumber === null).length).toBeGreaterThan(20);
    for (const line of lines)
      expect(line.expiresOn === null || line.expiresOn > line.on).toBe(true);
    const products = new Map<string, Set<string>>();
    for (const { lotNumber, consumable } of lines) {
      if (lotNumber === null) continue;
      products.set(lotNumber, (products.get(lotNumber) ?? new Set()).add(consumable));
    }
    expect([...products.values()].some((of) => of.size > 1)).toBe(true);
  });

  it('recalls a lot that sits in many charts and of which some is left', () => {
    const [recall, ...more] = all(scenario, 'lotStatus').filter(
      (s) => s.payload.status === 'recalled',
    );
    expect(more).toEqual([]);
    const lot = recall?.payload.lot.lotNumber;
    const held = scenario.world.shelf.all().filter((layer) => layer.held && layer.lot === lot);
    expect(Math.max(...held.map((layer) => layer.charts.size))).toBeGreaterThanOrEqual(8);
    const left = held.flatMap((l) => [...l.sealed.values(), ...l.opened.map((o) => o.left)]);
    expect(left.reduce((sum, each) => sum + each, 0)).toBeGreaterThan(0);
  });

  it('leaves something to act on today', () => {
    const { shelf, shortfalls, levels } = scenario.world;
    const there = shelf.all().map((layer) => {
      const sealed = [...layer.sealed.values()].reduce((sum, each) => sum + each, 0);
      return { ...layer, sealedLeft: sealed };
    });
    const expired = there.filter((l) => l.sealedLeft > 0 && (l.expires ?? '9999') < today);
    expect(expired.length).toBeGreaterThanOrEqual(1);
    const soon = there.filter(
      (l) => l.sealedLeft > 0 && l.expires && l.expires >= today && l.expires <= addDays(today, 60),
    );
    expect(soon.length).toBeGreaterThanOrEqual(1);
    const openTooLong = there.filter((l) =>
      l.opened.some((o) => o.left > 0 && o.useBy && o.useBy < today),
    );
    expect(openTooLong.length).toBeGreaterThanOrEqual(1);
    const low = [...levels].filter(([key, { at }]) => shelf.usable(key, today) <= at);
    expect(low.length).toBeGreaterThanOrEqual(5);
    expect(low.length).toBeLessThan(35);
    expect(shortfalls.length).toBeGreaterThanOrEqual(3);
    expect(shortfalls.length).toBeLessThan(80);
    expect(shortfalls.some((each) => BACK_ORDERED.includes(each.consumable))).toBe(true);
  });

  it('has mistakes that were put right: a visit, a delivery, counts, goods sent back', () => {
    expect(all(scenario, 'reverseVisit')).toHaveLength(1);
    expect(all(scenario, 'reverseDelivery')).toHaveLength(1);
    const counts = all(scenario, 'count').length;
    expect(counts).toBeGreaterThan(8);
    expect(counts).toBeLessThan(80);
    expect(all(scenario, 'return').length).toBeGreaterThanOrEqual(2);
    expect(all(scenario, 'opening')).toHaveLength(1);
    expect(all(scenario, 'move').length).toBeGreaterThan(200);
  });

  it('does nothing on a day when the practice is closed', () => {
    for (const { date } of scenario.steps) expect(isWorkday(date)).toBe(true);
  });
});

it('makes the same book for the same day', () => {
  const one = buildScenario(TODAY);
  const two = buildScenario(TODAY);
  expect(two.steps).toEqual(one.steps);
  expect(buildScenario('2026-11-26').steps).not.toEqual(one.steps);
});

it('uses a material as often as a practice would', () => {
  const { world } = buildScenario(TODAY);
  const visits = world.days.flatMap((day) => day.visits);
  const used = (key: string) =>
    visits
      .flatMap((visit) => visit.uses)
      .filter((use) => use.consumable === key)
      .reduce((sum, use) => sum + use.dispensed / 1_000_000, 0) / visits.length;
  // Typical quantities per visit: see the sources of the trade figures.
  expect(used('bib')).toBe(1);
  expect(used('gloves-m')).toBeGreaterThanOrEqual(4);
  expect(used('cartridge')).toBeGreaterThan(0.5);
  expect(used('cartridge')).toBeLessThan(3);
  expect(used('etch')).toBeGreaterThan(0.05);
  expect(used('etch')).toBeLessThan(0.25);
  const lines = visits.reduce((sum, visit) => sum + visit.uses.length, 0) / visits.length;
  expect(lines).toBeGreaterThan(15);
  expect(lines).toBeLessThan(40);
});
