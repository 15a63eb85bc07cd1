import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { TestService } from '../book/book.js';
import { CHART, openPricedBook, type PricedBook, quoteBody, textOfPdf } from './pricing-book.js';

let service: TestService;
let s: PricedBook;

beforeAll(async () => {
  service = await TestService.start();
  s = await openPricedBook(service, 'estimate');
});

afterAll(() => service.stop());

async function printed(query: string, changes: object = {}): Promise<string> {
  const answer = await service.app.inject({
    method: 'POST',
    url: `/api/quotes/estimate.pdf${query}`,
    headers: {
      cookie: `traybook_session=${s.book.practice.people.dentist.cookie}`,
      'content-type': 'application/json',
    },
    payload: JSON.stringify(quoteBody(s, changes)),
  });
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/pdf']);
  expect(answer.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
  return textOfPdf(answer.rawPayload);
}

/** Lines that wrap are drawn in pieces. */
const flat = (text: string) => text.replace(/\s+/g, ' ');

describe('the estimate for the patient', () => {
  it('says that it is one, for whom, and keeps the two reasons apart', async () => {
    const text = await printed('');
    expect(text).toContain('Estimate');
    for (const part of [
      'estimate practice',
      `Chart reference ${CHART}`,
      'Date 4 May 2026',
      'Left of the plan 50.00 of the deductible, 1,000.00 of the yearly maximum, as of 1 May 2026',
      `Estimate, ${CHART} Page 1 of 1`,
    ]) {
      expect(flat(text)).toContain(part);
    }
    const [before = '', cosmetic = ''] = text.split('Cosmetic work');
    const [, insured = ''] = before.split('Work for decay, fracture or wear');
    expect(flat(insured)).toContain('Tooth 21 M Front tooth composite (FRONT-1), decay 250.00');
    expect(insured).not.toContain('LOOKS-1');
    for (const amount of ['250.00', '70.00', '104.00', '76.00']) {
      expect(insured).toContain(amount);
    }
    expect(flat(cosmetic)).toContain(
      'Tooth 11 M Front tooth composite (LOOKS-1), cosmetic, not covered 320.00',
    );
    expect(cosmetic).toContain('320.00');
    expect(cosmetic).toContain('396.00');
    expect(flat(text)).toContain(
      "Local law and the plan's terms decide what is paid and what may be charged.",
    );
  });

  it('is printed in German', async () => {
    const text = flat(await printed('?language=de', { way: 'insured first, cosmetic later' }));
    for (const part of [
      'Kostenvoranschlag (Schätzung)',
      'Datum 4. Mai 2026',
      'Karteinummer C-2001',
      'Behandlung wegen Karies, Bruch oder Abnutzung',
      'Kosmetische Behandlung',
      'Sitzung 2',
      '104,00',
      'Alle Beträge in EUR',
      'entscheiden das örtliche Recht und die Bedingungen der Versicherung',
    ]) {
      expect(text).toContain(part);
    }
    expect(text).not.toContain('Estimate');
  });

  it('goes on to another page when it is long', async () => {
    const [one, two] = quoteBody(s).restorations as object[];
    const restorations = Array.from({ length: 32 }, (_, i) => (i % 2 === 0 ? one : two));
    const text = await printed('', { restorations });
    expect(text.split('LOOKS-1')).toHaveLength(17);
    expect(flat(text)).toContain('Date Signature');
    for (const page of ['Page 1 of 3', 'Page 3 of 3']) expect(text).toContain(page);
  });

  it('is refused where it is for nobody or in a way that is not open', async () => {
    const ask = async (query: string, changes: object) => {
      const answer = await s.book.ask(
        'POST',
        `/quotes/estimate.pdf${query}`,
        quoteBody(s, changes),
      );
      const errors = (answer.body.errors ?? []) as { field: string }[];
      return [answer.status, ...errors.map(({ field }) => field)];
    };
    expect(await ask('', { chartReference: null })).toEqual([400, 'chartReference']);
    expect(await ask('?language=fr', {})).toEqual([400, 'language']);
    const [first] = quoteBody(s).restorations as object[];
    const single = { restorations: [first], way: 'cosmetic only' };
    expect(await ask('', single)).toEqual([422, 'way']);
    expect(await ask('', { way: 'somehow' })).toEqual([400, 'way']);
  });
});
