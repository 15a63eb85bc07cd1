import { Clock } from '#lib/platform';
import { deliveryLine, openSmallBook, type SmallBook, visitBody } from '../../book/book.js';
import type { TestService } from '../../http/service.js';

/** The noon of one day, whatever the day of the machine. */
export class FixedClock extends Clock {
  constructor(private readonly day: string) {
    super();
  }

  override now(): Date {
    return new Date(`${this.day}T10:00:00Z`);
  }
}

export const TODAY = '2026-05-04';

/** A book in which something of every kind needs somebody on 4 May 2026. */
export async function openBusyBook(service: TestService, prefix: string): Promise<SmallBook> {
  const s = await openSmallBook(service, prefix);
  await s.book.deliver(s.supplier, '2026-01-12', [
    deliveryLine(s.etchant, s.store, 1, '20', { lotNumber: 'E-1', expiresOn: '2026-04-30' }),
    deliveryLine(s.adhesive, s.store, 1, '110', { lotNumber: 'A-1', expiresOn: '2027-01-31' }),
    deliveryLine(s.capsule, s.room, 1, '110', { lotNumber: 'K-1', expiresOn: '2026-05-05' }),
    deliveryLine(s.strip, s.room, 1, '9', { expiresOn: '2026-06-15' }),
  ]);
  const held = await s.book.deliver(s.supplier, '2026-02-02', [
    deliveryLine(s.paste, s.room, 1, '72', { lotNumber: 'P-7', expiresOn: '2027-06-30' }),
  ]);
  const recalled = { status: 'recalled', note: 'Notice of the maker of 2 May.' };
  await s.book.done('PUT', `/lots/${held.lines[0]?.lot.id ?? ''}/status`, recalled);
  const levels = { reorderAt: '200', reorderUpTo: '500' };
  await s.book.done('PATCH', `/consumables/${s.strip.id}`, levels);
  await s.book.done('POST', '/visits', visitBody(s, { visitedOn: TODAY }));
  return s;
}
