import { inflateSync } from 'node:zlib';
import {
  deliveryLine,
  openSmallBook,
  restoration,
  type SmallBook,
  type TestService,
} from '../book/book.js';
import type { Answer } from '../http/service.js';

/** A small book whose consumables have a price, with fees, a plan and what is left of it. */
export interface PricedBook extends SmallBook {
  readonly plan: string;
  readonly insuredFee: string;
  readonly cosmeticFee: string;
}

export const CHART = 'C-2001';

export async function openPricedBook(service: TestService, prefix: string): Promise<PricedBook> {
  const s = await openSmallBook(service, prefix);
  await s.book.deliver(s.supplier, '2026-03-02', [
    deliveryLine(s.etchant, s.store, 1, '20'),
    deliveryLine(s.adhesive, s.store, 1, '110'),
    deliveryLine(s.paste, s.store, 2, '72'),
    deliveryLine(s.capsule, s.store, 1, '110'),
    deliveryLine(s.strip, s.store, 1, '7'),
    deliveryLine(s.bib, s.store, 1, '22.50'),
  ]);
  const insuredFee = await feeOf(s, { code: 'FRONT-1', reason: 'decay', fee: '250' });
  const cosmeticFee = await feeOf(s, { code: 'LOOKS-1', reason: 'cosmetic', fee: '320' });
  const plan = (await s.book.done('POST', '/fee-plans', planBody())).id ?? '';
  const terms = `/fee-plans/${plan}/terms`;
  const from = { validFrom: '2026-01-01' };
  await s.book.done('POST', terms, { ...from, feeId: insuredFee, allowedFee: '180' });
  await s.book.done('POST', terms, { ...from, feeId: cosmeticFee, allowedFee: '180' });
  await s.book.done('POST', terms, { ...from, feeClass: 'Basic', coverage: '0.8' });
  await s.book.done('POST', '/plan-balances', {
    planId: plan,
    chartReference: CHART,
    asOf: '2026-05-01',
    deductibleLeft: '50',
    maximumLeft: '1000',
  });
  return { ...s, plan, insuredFee, cosmeticFee };
}

async function feeOf(s: SmallBook, more: { code: string } & Record<string, string>) {
  const body = {
    name: `Front tooth ${more.code}`,
    feeClass: 'basic',
    templateId: s.template,
    validFrom: '2026-01-01',
    ...more,
  };
  return (await s.book.done('POST', '/fees', body)).id ?? '';
}

export function planBody(changes: object = {}): Record<string, unknown> {
  return {
    name: 'Meadow plan',
    inNetwork: true,
    deductible: '50',
    yearlyMaximum: '1500',
    feeCeiling: 'never',
    ceilingSource: 'Contract of 2024, section 7',
    ceilingCheckedOn: '2026-01-05',
    downgradeBilled: true,
    ...changes,
  };
}

/** One tooth with decay and its neighbour for looks. */
export function quoteBody(s: PricedBook, changes: object = {}): Record<string, unknown> {
  return {
    chartReference: CHART,
    planId: s.plan,
    quotedOn: '2026-05-04',
    locationId: s.room,
    restorations: [
      restoration(s),
      restoration(s, { tooth: '11', reason: 'cosmetic', minutes: 50 }),
    ],
    ...changes,
  };
}

export interface Quote {
  readonly chairMinuteCost: string | null;
  readonly plan: Record<string, unknown> | null;
  readonly restorations: readonly Record<string, unknown>[];
  readonly unpriced: readonly unknown[];
  readonly ways: readonly Way[];
}

export interface Way extends Record<string, unknown> {
  readonly way: string;
  readonly lines: readonly Record<string, unknown>[];
  readonly visits: readonly Record<string, unknown>[];
  readonly repeated: readonly { consumable: { name: string }; quantity: string; cost: string }[];
}

export function asQuote(answer: Answer): Quote {
  return answer.body as unknown as Quote;
}

/** The words of a PDF made with standard fonts, in the order in which they were drawn. */
export function textOfPdf(pdf: Buffer): string {
  const raw = pdf.toString('latin1');
  const words: string[] = [];
  for (const { 1: length, index } of raw.matchAll(/\/Length (\d+)[^>]*>>\s*stream\n/g)) {
    const start = raw.indexOf('stream\n', index) + 'stream\n'.length;
    const bytes = pdf.subarray(start, start + Number(length));
    const drawn = raw.slice(index - 60, start).includes('FlateDecode')
      ? inflateSync(bytes).toString('latin1')
      : bytes.toString('latin1');
    for (const [, shown] of drawn.matchAll(/\[([^\]]*)\] TJ/g)) {
      const hex = [...(shown ?? '').matchAll(/<([0-9a-f]*)>/g)].map(([, part]) => part).join('');
      words.push(new TextDecoder('windows-1252').decode(Buffer.from(hex, 'hex')));
    }
  }
  return words.join('\n');
}
