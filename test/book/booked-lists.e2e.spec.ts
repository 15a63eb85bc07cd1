import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { UnitOfWork } from '#lib/platform';
import { type BookedVisitInput, BookVisits } from '#lib/visits';
import { SetClock } from '../purchasing/post-boxes.js';
import { openStockedBook, type SmallBook, TestService, visitBody } from './book.js';

const TODAY = '2026-05-04';

let service: TestService;
let s: SmallBook;

beforeAll(async () => {
  service = await TestService.start({ clock: new SetClock(new Date(`${TODAY}T06:00:00Z`)) });
  s = await openStockedBook(service, 'list');
});

afterAll(async () => {
  await service.stop();
});

const get = (id: string) => s.book.done('GET', `/booked-visits/${id}`);
const keep = (bookedVisitId: string) =>
  s.book.ask('POST', '/visits', visitBody(s, { bookedVisitId, visitedOn: TODAY }));
const runMany = (rows: readonly BookedVisitInput[]) =>
  service.app
    .get(UnitOfWork)
    .run(s.book.practice.owner.practiceId, (tx) =>
      service.app.get(BookVisits).runMany(tx, s.book.practice.owner, rows),
    );

describe('many bookings at once', () => {
  const row = (externalReference: string, changes: Partial<BookedVisitInput> = {}) => ({
    day: '2026-09-01',
    externalReference,
    restorations: [{ templateId: s.template }],
    ...changes,
  });

  it('change nothing when they come a second time', async () => {
    const rows = Array.from({ length: 300 }, (_, i) => row(`list-${i}`));
    expect(await runMany(rows)).toMatchObject({ created: 300, changed: 0, unchanged: 0 });
    const again = await runMany(rows);
    expect(again).toMatchObject({ created: 0, changed: 0, unchanged: 300 });
    expect(new Set(again.ids).size).toBe(300);
    const moved = rows.map((each, i) => (i < 2 ? { ...each, day: '2026-09-02' } : each));
    expect(await runMany(moved)).toMatchObject({ created: 0, changed: 2, unchanged: 298 });
  });

  it('leave alone what is recorded, and book again what was dropped and changed', async () => {
    const { ids: made } = await runMany([row('kept', { day: TODAY }), row('gone')]);
    await keep(made[0] ?? '');
    await s.book.done('POST', `/booked-visits/${made[1]}/dropping`, {
      version: 1,
      note: 'no time',
    });
    const later = { day: '2026-09-09' };
    expect(await runMany([row('kept', later), row('gone')])).toMatchObject({ unchanged: 2 });
    expect(await runMany([row('kept', later), row('gone', later)])).toMatchObject({ changed: 1 });
    expect(await get(made[0] ?? '')).toMatchObject({ day: TODAY, state: 'kept' });
    expect(await get(made[1] ?? '')).toMatchObject({ day: '2026-09-09', state: 'booked' });
  });

  it('are all refused for one that is wrong, with the row and the field', async () => {
    const nobody = '0199c0de-0000-7000-8000-00000000dead';
    const wrong = [
      [{ restorations: [{ templateId: s.template, tooth: '99' }] }, 'restorations[0].tooth'],
      [{ restorations: [{ templateId: nobody }] }, 'restorations[0].templateId'],
      [{ dentistId: s.book.practice.people.assistant.id }, 'dentistId'],
      [{ alike: 0 }, 'alike'],
      [{ day: '2031-01-01' }, 'day'],
      [{ restorations: [] }, 'restorations'],
      [{ externalReference: 'fine' }, 'externalReference'],
    ] as const;
    for (const [changes, field] of wrong) {
      const refused = runMany([row('fine'), row('bad', changes)]);
      await expect(refused).rejects.toMatchObject({ fields: [{ field: `rows[1].${field}` }] });
    }
    expect(await runMany([row('fine')])).toMatchObject({ created: 1 });
  });
});
