import { expect, it } from '@jest/globals';
import type pg from 'pg';
import { ComputeLevels } from '../../libs/purchasing/src/index.js';
import { postVisit } from '../book/book.js';
import { disagreements, figureIn, lowAlerts } from './computed-levels.js';
import { type PlanningBook, TODAY } from './planning-book.js';
import type { SetClock } from './post-boxes.js';

interface Given {
  readonly s: PlanningBook;
  /** The owner of the database. */
  readonly owner: pg.Pool;
  readonly clock: SetClock;
}

/** By which level the alert about a reorder point goes, over half a year of visits. */
export function alertLevelCases(given: () => Given): void {
  const planning = (id: string, levels: object) =>
    given().s.book.done('PUT', `/reorder/settings/consumables/${id}`, levels);
  const typeIn = (id: string, reorderAt: string | null) =>
    given().s.book.done('PATCH', `/consumables/${id}`, { reorderAt, reorderUpTo: null });
  const renew = () => given().s.book.service.app.get(ComputeLevels).run();

  it('never contradicts ordering over the same facts, whoever said the level', async () => {
    const { s } = given();
    for (const id of [s.bib.id, s.expiring.id]) await typeIn(id, null);
    const none = new Map<string, number>();
    const plain = await disagreements(s.book, none);
    expect(plain).toMatchObject({ compared: 8, wrong: [] });
    expect(plain.due).toBeGreaterThan(1);
    // Set by hand: above and below what is there, and zero for what is not used.
    await planning(s.etchant.id, { reorderAt: '1000' });
    await planning(s.adhesive.id, { reorderAt: '0.01', orderUpTo: '30' });
    await planning(s.capsule.id, { reorderAt: '0' });
    await planning(s.expiring.id, { reorderAt: '3.5', orderUpTo: '4' });
    expect((await disagreements(s.book, none)).wrong).toEqual([]);
    // No room for the smallest pack: due, and held back.
    await planning(s.bib.id, { shelfRoom: '1' });
    expect((await disagreements(s.book, none)).wrong).toEqual([]);
    expect((await lowAlerts(s.book)).get(s.bib.id)?.level?.heldBack).toBe(true);
    await planning(s.bib.id, {});
    // Typed in: it goes by that, and says beside it what planning makes of it.
    const typed = new Map([
      [s.newShade.id, 500],
      [s.bib.id, 3],
      [s.strip.id, 0],
      [s.expiring.id, 2],
    ]);
    for (const [id, level] of typed) await typeIn(id, String(level));
    expect((await disagreements(s.book, typed)).wrong).toEqual([]);
    const shade = (await lowAlerts(s.book)).get(s.newShade.id);
    expect(shade?.sentence).toMatch(/reorder point of 500 g, typed in .* Planning computed a/);
    for (const id of typed.keys()) await typeIn(id, null);
    for (const id of [s.etchant, s.adhesive, s.capsule, s.expiring].map((each) => each.id)) {
      await planning(id, {});
    }
  }, 60_000);

  it('speaks by a computed level as soon as stock falls to it, and names its figures', async () => {
    const { s } = given();
    const { items } = await s.book.done<{
      items: { consumable: { id: string }; position: string; reorderPoint: string; next: string }[];
    }>('GET', '/reorder/items');
    const shade = items.find(({ consumable }) => consumable.id === s.newShade.id);
    expect([shade?.next, (await lowAlerts(s.book)).has(s.newShade.id)]).toEqual([
      'order later',
      false,
    ]);
    const spare = Number(shade?.position) - Number(shade?.reorderPoint);
    const use = { consumableId: s.newShade.id, dispensed: spare.toFixed(6) };
    const visit = await postVisit(s, { visitedOn: TODAY, usage: [use] });
    const found = (await lowAlerts(s.book)).get(s.newShade.id);
    expect(found?.level).toMatchObject({ kind: 'computed', at: shade?.reorderPoint });
    expect(Number(figureIn(found, 'position'))).toBeLessThanOrEqual(Number(shade?.reorderPoint));
    expect((await disagreements(s.book, new Map())).wrong).toEqual([]);
    await s.book.done('POST', `/visits/${visit.id}/reversal`, { note: 'Another patient.' });
    expect((await lowAlerts(s.book)).has(s.newShade.id)).toBe(false);
  });

  it('is computed without being asked: once, after a booking and a while, and on a new day', async () => {
    const { s, owner, clock } = given();
    const practice = s.book.practice.owner.practiceId;
    await owner.query('DELETE FROM computed_levels');
    await owner.query('DELETE FROM computed_level_readings');
    expect([...(await lowAlerts(s.book)).keys()]).toEqual([]);
    expect(await renew()).toContain(practice);
    expect((await lowAlerts(s.book)).has(s.bib.id)).toBe(true);
    expect(await renew()).toEqual([]);
    const earlier = (by: string) =>
      owner.query('UPDATE computed_level_readings SET read_at = now() - $1::interval', [by]);
    await earlier('10 minutes');
    expect(await renew()).toContain(practice);
    // Nothing booked or changed since: not before an hour is over. Nobody but the owner of the database
    // could make the trail of a day ago out of that of today, and only where no trigger watches.
    await owner.query(`SET session_replication_role = replica;
      UPDATE idempotency_keys SET created_at = created_at - interval '1 day';
      UPDATE audit_entries SET recorded_at = recorded_at - interval '1 day';
      SET session_replication_role = DEFAULT`);
    await earlier('10 minutes');
    expect(await renew()).toEqual([]);
    await planning(s.etchant.id, { reviewDays: 5 });
    expect(await renew()).toContain(practice);
    await planning(s.etchant.id, {});
    // A reading of older facts replaces nothing, however late it is written.
    await owner.query('DELETE FROM computed_levels');
    await earlier('-1 hour');
    await s.book.done('GET', '/reorder/items');
    expect((await owner.query('SELECT FROM computed_levels')).rowCount).toBe(0);
    await earlier('61 minutes');
    expect(await renew()).toContain(practice);
    clock.pass(24 * 60);
    expect(await renew()).toContain(practice);
    const bib = (await lowAlerts(s.book)).get(s.bib.id);
    expect(bib?.level?.computed?.on).toBe('2026-05-05');
    clock.pass(-24 * 60);
  });

  it('is none for what the practice no longer keeps', async () => {
    const { s } = given();
    const set = (active: boolean) => s.book.done('PATCH', `/consumables/${s.bib.id}`, { active });
    expect((await lowAlerts(s.book)).has(s.bib.id)).toBe(true);
    await set(false);
    expect((await lowAlerts(s.book)).has(s.bib.id)).toBe(false);
    await set(true);
  });
}
