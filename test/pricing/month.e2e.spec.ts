import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { TestService } from '../book/book.js';
import { openPricedBook, type PricedBook } from './pricing-book.js';

let service: TestService;
let s: PricedBook;

beforeAll(async () => {
  service = await TestService.start();
  s = await openPricedBook(service, 'month');
});

afterAll(() => service.stop());

const sold = { name: 'Filling', price: '100', variable: '20', number: 300 };
const question = (changes: object = {}) => ({ fixedCost: '18000', kinds: [sold], ...changes });

describe('how many pay for a month', () => {
  // OpenStax, Principles of Accounting, Volume 2 (2019), ch. 3.2: 225 and 425 units.
  it('is answered for one kind, with a wished profit', async () => {
    const answer = await s.book.ask('POST', '/quotes/break-even', question(), 'dentist');
    expect([answer.status, answer.body]).toEqual([
      200,
      {
        kinds: [
          {
            name: 'Filling',
            contribution: '80.00',
            contributionShare: '0.8',
            contributionOfAll: '24000.00',
            contributionPerHour: null,
            needed: '225',
            neededWhole: 225,
            rank: null,
            fits: null,
          },
        ],
        revenue: '30000.00',
        contribution: '24000.00',
        income: '6000.00',
        leverage: '4',
        breakEvenRevenue: '22500.00',
        safety: '7500.00',
        safetyShare: '0.25',
        chairHours: null,
      },
    ]);
    const wished = question({ targetProfit: '16000' });
    const more = await s.book.ask('POST', '/quotes/break-even', wished, 'owner');
    expect(more.body).toMatchObject({
      kinds: [{ neededWhole: 425 }],
      breakEvenRevenue: '42500.00',
    });
  });

  it('is answered for a mix with scarce hours', async () => {
    const kinds = [
      { ...sold, minutes: '30', number: 10 },
      { name: 'Looks', price: '320', variable: '20', number: 5, minutes: '60' },
    ];
    const asked = question({ chairHours: '7', kinds });
    const { body } = await s.book.ask('POST', '/quotes/break-even', asked);
    expect(body).toMatchObject({
      kinds: [
        { contributionPerHour: '160.00', rank: 2, fits: '4' },
        { contributionPerHour: '300.00', rank: 1, fits: '5' },
      ],
      chairHours: '10',
    });
  });

  it('is refused by its field, and to who may not see prices', async () => {
    const cases: [object, unknown[]][] = [
      [question({ fixedCost: '-1' }), [400, 'fixedCost']],
      [question({ kinds: [] }), [400, 'kinds']],
      [question({ kinds: [{ ...sold, number: 1.5 }] }), [400, 'kinds[0].number']],
      [question({ kinds: [{ ...sold, minutes: '0' }] }), [400, 'kinds[0].minutes']],
      [question({ chairHours: '8', kinds: [sold] }), [400, 'kinds[0].minutes']],
      [question({ kinds: [{ ...sold, price: 100 }] }), [400, 'kinds[0].price']],
    ];
    for (const [body, expected] of cases) {
      const answer = await s.book.ask('POST', '/quotes/break-even', body);
      const errors = (answer.body.errors ?? []) as { field: string }[];
      expect([answer.status, ...errors.map(({ field }) => field)]).toEqual(expected);
    }
    const denied = await s.book.ask('POST', '/quotes/break-even', question(), 'assistant');
    expect(denied.status).toBe(403);
  });
});
