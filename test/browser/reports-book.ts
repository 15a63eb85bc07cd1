import {
  deliveryLine,
  openSmallBook,
  restoration,
  type SmallBook,
  visitBody,
} from '../book/book.js';
import type { TestService } from '../http/service.js';

const MOST_VISITS = 10;

/**
 * Ten visits of two restorations that use 0.084 g of paste where the template says 0.06 g. After five
 * of them every price rises from 40 to 50. A chair minute costs 120000 / 96000 = 1.25.
 */
export async function openReportsBook(service: TestService, prefix: string): Promise<SmallBook> {
  const s = await openSmallBook(service, prefix);
  await s.book.done('POST', '/cost-rates', {
    ...{ validFrom: '2026-01-01', yearlyCost: '120000', practicalMinutes: 96_000 },
  });
  for (const [reason, fee] of [
    ['decay', '80'],
    ['cosmetic', '240'],
  ] as const) {
    const body = { code: `F-${reason}`, name: `Front ${reason}`, feeClass: 'basic', fee };
    const valid = { templateId: s.template, reason, validFrom: '2026-01-01' };
    await s.book.done('POST', '/fees', { ...body, ...valid });
  }
  await deliverAll(s, '2026-01-05', '40');
  await throwAway(s);
  for (let n = 0; n < MOST_VISITS; n += 1) {
    if (n === 5) await deliverAll(s, '2026-03-11', '50');
    await s.book.done('POST', '/visits', visitOf(s, n));
  }
  return s;
}

async function deliverAll(s: SmallBook, day: string, price: string): Promise<void> {
  const items = [s.etchant, s.adhesive, s.paste, s.capsule, s.strip, s.bib];
  const until = { expiresOn: '2029-12-31' };
  await s.book.deliver(
    s.supplier,
    day,
    items.map((item) => deliveryLine(item, s.store, 1, price, until)),
  );
}

/** One capsule of the wrong shade. */
async function throwAway(s: SmallBook): Promise<void> {
  const stock = await s.book.done<{ items: { id: string }[] }>(
    'GET',
    `/stock?consumableId=${s.capsule.id}`,
  );
  const what = { quantity: '0.25', reason: 'wrong shade opened', occurredOn: '2026-02-03' };
  const holdingId = stock.items[0]?.id;
  await s.book.done('POST', '/stock/write-offs', { holdingId, ...what });
}

function visitOf(s: SmallBook, n: number): Record<string, unknown> {
  const used = { dispensed: '0.084', placed: '0.048' };
  return visitBody(s, {
    visitedOn: `2026-0${2 + Math.floor(n / 4)}-1${n % 4}`,
    chartReference: `C-${n}`,
    restorations: [restoration(s), restoration(s, { tooth: '22', reason: 'cosmetic' })],
    usage: [
      { line: `r1/a1/5/${s.paste.id}`, ...used },
      { line: `r2/a1/5/${s.paste.id}`, ...used },
    ],
  });
}
