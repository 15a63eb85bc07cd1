import { inspect, isDeepStrictEqual } from 'node:util';
import type pg from 'pg';
import { postVisit, restoration, TestService, type Visit } from '../book/book.js';
import { asOwner } from '../harness/database.js';
import { openPricedBook, type PricedBook } from './pricing-book.js';

const DAYS = ['2026-05-04', '2026-05-29', '2026-06-01', '2026-06-15', '2026-07-31'];

export interface Figures {
  readonly restorations: number;
  readonly charged: number;
  readonly fromFeeList: number;
  readonly withoutFee: number;
  readonly fee: string;
  readonly planPays: string;
  readonly patientPays: string;
  readonly writeOff: string;
  readonly income: string;
  readonly material: string;
  readonly contribution: string;
  readonly minutes: number;
  readonly contributionPerHour: string | null;
  readonly mean: string | null;
  readonly p10: string | null;
  readonly p50: string | null;
  readonly p90: string | null;
  readonly feeListIncome: string;
  readonly feeListMaterial: string;
  readonly feeListContribution: string;
  readonly withoutFeeMaterial: string;
}

export interface Row extends Figures {
  readonly templateId: string | null;
  readonly reason: string | null;
  readonly dentistId: string | null;
  readonly month: string | null;
}

export interface Report {
  readonly rows: readonly Row[];
  readonly totals: Figures;
}

export interface Costs {
  readonly rows: readonly (Pick<Row, 'templateId' | 'reason' | 'dentistId' | 'month'> & {
    readonly restorations: number;
    readonly total: string;
  })[];
  readonly totals: { readonly restorations: number; readonly total: string };
}

export const cents = (text: string): number => Math.round(Number(text) * 100);

/** A priced book with visits, most of them charged, some again, one reversed. */
export class ContributionBook {
  private constructor(
    readonly service: TestService,
    readonly owner: pg.Client,
    readonly s: PricedBook,
  ) {}

  static async open(prefix: string): Promise<ContributionBook> {
    const service = await TestService.start();
    const owner = await asOwner(service.databaseUrl);
    const book = new ContributionBook(service, owner, await openPricedBook(service, prefix));
    await book.fill();
    return book;
  }

  async stop(): Promise<void> {
    await this.owner.end();
    await this.service.stop();
  }

  /** Asked before and after the months are folded: nobody may see a difference. */
  async report(query: string): Promise<Report> {
    const path = `/reports/contributions?${query}`;
    const before = await this.s.book.done<Report>('GET', path);
    await this.owner.query('SELECT fold_contributions(100)');
    const after = await this.s.book.done<Report>('GET', path);
    if (!isDeepStrictEqual(after, before)) {
      throw new Error(`Folding changed ${path}: ${inspect(before)} became ${inspect(after)}`);
    }
    return after;
  }

  costs(query: string): Promise<Costs> {
    return this.s.book.done<Costs>('GET', `/reports/restoration-costs?${query}`);
  }

  private async fill(): Promise<void> {
    const { s } = this;
    await s.book.done('POST', `/fees/${s.insuredFee}/versions`, {
      validFrom: '2026-06-01',
      fee: '261.50',
    });
    const posted: Visit[] = [];
    for (let n = 0; n < 20; n += 1) posted.push(await this.post(n));
    for (const [n, visit] of posted.entries()) if (n % 3 !== 0) await this.charge(visit, n);
    for (const [n, visit] of posted.entries()) if (n % 5 === 1) await this.charge(visit, n + 40);
    await s.book.done('POST', `/visits/${posted[7]?.id}/reversal`, { note: 'Entered wrongly.' });
    await this.writeOff();
  }

  /** Decay and looks have a fee in the list, wear has none. */
  post(n: number): Promise<Visit> {
    const { s } = this;
    const people = s.book.practice.people;
    return postVisit(s, {
      chartReference: `C-${n}`,
      visitedOn: DAYS[n % DAYS.length],
      dentistId: n % 4 === 0 ? people.owner.id : people.dentist.id,
      restorations: [
        restoration(s, { minutes: n % 7 === 0 ? 0 : 30 + n }),
        restoration(s, { tooth: '22', surfaces: 'D', reason: n % 2 ? 'cosmetic' : 'wear' }),
        ...(n % 6 === 2
          ? [restoration(s, { tooth: '12', surfaces: 'D', reason: 'wear', attempts: 2 })]
          : []),
      ],
    });
  }

  charge(visit: Visit, n: number): Promise<unknown> {
    const { s } = this;
    return s.book.done('POST', '/charges', {
      visitId: visit.id,
      charges: visit.restorations.slice(0, 2).map(({ id }, i) => {
        if (i > 0) return { restorationId: id, fee: `${100 + n}.10` };
        const fee = 200 + n;
        const split = { planPays: '120.05', writeOff: '20', patientPays: `${fee - 141}.95` };
        return { restorationId: id, fee: `${fee}`, planId: s.plan, ...split };
      }),
    });
  }

  private async writeOff(): Promise<void> {
    const { s } = this;
    const { rows } = await this.owner.query<{ id: string }>(
      `SELECT h.id FROM holdings h JOIN layers l ON l.id = h.layer_id
     WHERE l.consumable_id = $1 AND h.on_hand > 10`,
      [s.strip.id],
    );
    const waste = { holdingId: rows[0]?.id, quantity: '10', reason: 'damaged', note: 'Got wet.' };
    await s.book.done('POST', '/stock/write-offs', { ...waste, occurredOn: '2026-06-20' });
  }
}

/** One restoration after the other, each asked for by itself: no view and no join of the report. */
export interface Known {
  readonly templateId: string;
  readonly reason: string;
  readonly dentistId: string;
  readonly month: string;
  readonly minutes: number;
  readonly material: number;
  readonly fee: number | null;
  readonly plan: number;
  readonly writeOff: number;
  readonly charged: boolean;
}

export async function oneByOne({ owner, s }: ContributionBook): Promise<Known[]> {
  const { rows } = await owner.query<Known & { id: string; day: string }>(
    `SELECT r.id, r.template_id AS "templateId", r.reason, v.dentist_id AS "dentistId",
            to_char(v.visited_on, 'YYYY-MM') AS month, v.visited_on::text AS day, r.minutes,
            (100 * (r.own_cost + r.shared_cost))::int AS material
     FROM restorations r JOIN visits v ON v.id = r.visit_id
     WHERE v.reversed_at IS NULL AND v.practice_id = $1`,
    [s.book.practice.owner.practiceId],
  );
  const known: Known[] = [];
  for (const row of rows) {
    const { rows: charges } = await owner.query<{ fee: number; plan: number; off: number }>(
      `SELECT (100 * fee)::int AS fee, (100 * plan_pays)::int AS plan, (100 * write_off)::int AS off
       FROM charges WHERE restoration_id = $1 ORDER BY recorded_at DESC LIMIT 1`,
      [row.id],
    );
    const { rows: listed } = await owner.query<{ fee: number }>(
      `SELECT (100 * v.fee)::int AS fee FROM fees f JOIN fee_versions v ON v.fee_id = f.id
       WHERE f.template_id = $1 AND f.reason = $2 AND v.valid_from <= $3
       ORDER BY v.valid_from DESC LIMIT 1`,
      [row.templateId, row.reason, row.day],
    );
    const [last] = charges;
    const fee = last?.fee ?? listed[0]?.fee ?? null;
    const pays = { plan: last?.plan ?? 0, writeOff: last?.off ?? 0 };
    known.push({ ...row, fee, ...pays, charged: last !== undefined });
  }
  return known;
}

/** Nearest rank: the smallest value that so many in a hundred do not exceed. */
function rank(sorted: readonly number[], percent: number): number | null {
  return sorted[Math.ceil((percent * sorted.length) / 100) - 1] ?? null;
}

export function figuresOf(all: readonly Known[]) {
  const counted = all.filter((each) => each.fee !== null);
  const none = all.filter((each) => each.fee === null);
  const listed = counted.filter((each) => !each.charged);
  const add = (of: readonly Known[], what: (each: Known) => number) =>
    of.reduce((sum, each) => sum + what(each), 0);
  const gain = (each: Known) => (each.fee ?? 0) - each.writeOff - each.material;
  const sorted = counted.map(gain).sort((a, b) => a - b);
  const [fee, plan] = [add(counted, (each) => each.fee ?? 0), add(counted, (each) => each.plan)];
  const off = add(counted, (each) => each.writeOff);
  return {
    counts: [counted.length, counted.length - listed.length, listed.length, none.length],
    money: [fee, plan, fee - plan - off, off, fee - off, add(counted, (each) => each.material)],
    contribution: add(counted, gain),
    minutes: add(counted, (each) => each.minutes),
    spread: [rank(sorted, 10), rank(sorted, 50), rank(sorted, 90)],
    listed: [
      add(listed, (each) => each.fee ?? 0),
      add(listed, (each) => each.material),
      add(listed, gain),
    ],
    withoutFee: add(none, (each) => each.material),
  };
}

export function shown(f: Figures): ReturnType<typeof figuresOf> {
  return {
    counts: [f.restorations, f.charged, f.fromFeeList, f.withoutFee],
    money: [f.fee, f.planPays, f.patientPays, f.writeOff, f.income, f.material].map(cents),
    contribution: cents(f.contribution),
    minutes: f.minutes,
    spread: [f.p10, f.p50, f.p90].map((text) => (text === null ? null : cents(text))),
    listed: [f.feeListIncome, f.feeListMaterial, f.feeListContribution].map(cents),
    withoutFee: cents(f.withoutFeeMaterial),
  };
}
