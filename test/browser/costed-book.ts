import {
  deliveryLine,
  openSmallBook,
  restoration,
  type SmallBook,
  type Visit,
  visitBody,
} from '../book/book.js';
import type { TestService } from '../http/service.js';

export interface CostedBook {
  readonly s: SmallBook;
  /** One filling; two restorations of which one was done again; one from capsules. */
  readonly visits: readonly Visit[];
  /** The lot of the paste, which was scanned in the second visit. */
  readonly pasteLot: string;
  readonly deliveryId: string;
}

/** A small book with deliveries, three visits in three months, a move and a wrong shade. */
export async function openCostedBook(service: TestService, prefix: string): Promise<CostedBook> {
  const s = await openSmallBook(service, prefix);
  const lot = (lotNumber: string) => ({ lotNumber, expiresOn: '2027-06-30' });
  const delivery = await s.book.deliver(s.supplier, '2026-01-12', [
    deliveryLine(s.paste, s.store, 2, '72', lot('P-71')),
    deliveryLine(s.etchant, s.store, 1, '20', lot('SAME-1')),
    deliveryLine(s.adhesive, s.store, 1, '110', lot('SAME-1')),
    deliveryLine(s.capsule, s.store, 1, '110', lot('K-1')),
    deliveryLine(s.strip, s.store, 1, '9'),
    deliveryLine(s.bib, s.store, 1, '26', lot('B-1')),
  ]);
  const pasteLot = delivery.lines[0]?.lot.id ?? '';
  await takeOut(s, s.paste.id, 'moves', { quantity: '4', toLocationId: s.room });
  await takeOut(s, s.capsule.id, 'write-offs', { quantity: '0.25', reason: 'wrong shade opened' });
  const post = (changes: object) => s.book.done<Visit>('POST', '/visits', visitBody(s, changes));
  const visits = [
    await post({ visitedOn: '2026-03-10' }),
    await post({
      ...{ visitedOn: '2026-04-14', chartReference: 'C-1002', scanned: [{ lotId: pasteLot }] },
      restorations: [
        restoration(s, { tooth: '11', reason: 'cosmetic', attempts: 2 }),
        restoration(s, { reason: 'cosmetic' }),
      ],
    }),
    await post({
      restorations: [restoration(s, { reason: 'wear', templateId: s.capsuleTemplate, shades: [] })],
    }),
  ];
  return { s, visits, pasteLot, deliveryId: delivery.id };
}

async function takeOut(
  s: SmallBook,
  consumableId: string,
  how: 'moves' | 'write-offs',
  body: object,
): Promise<void> {
  const stock = await s.book.done<{ items: { id: string }[] }>(
    'GET',
    `/stock?consumableId=${consumableId}`,
  );
  const holdingId = stock.items[0]?.id;
  await s.book.done('POST', `/stock/${how}`, { holdingId, occurredOn: '2026-03-02', ...body });
}
