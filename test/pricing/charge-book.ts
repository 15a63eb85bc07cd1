import type pg from 'pg';
import { postVisit, restoration, TestService, type Visit } from '../book/book.js';
import { asOwner } from '../harness/database.js';
import { openPricedBook, type PricedBook } from './pricing-book.js';

export interface Charge {
  readonly id: string;
  readonly restorationId: string;
  readonly feeCode: string | null;
  readonly fee: string;
  readonly planPays: string;
  readonly patientPays: string;
  readonly writeOff: string;
  readonly deductibleUsed: string;
  readonly replacesId: string | null;
  readonly current: boolean;
}

interface Charges {
  readonly charges: readonly Charge[];
  readonly totals: object;
  readonly left: readonly object[];
}

/** One body for all restorations of a visit, with what is said of each. */
export function bodyOf(of: Visit, ...more: object[]): { visitId: string; charges: object[] } {
  const charges = of.restorations.map(({ id }, i) => ({ restorationId: id, ...more[i] }));
  return { visitId: of.id, charges };
}

export function split(charge: Charge | undefined): string[] {
  return charge ? [charge.fee, charge.planPays, charge.patientPays, charge.writeOff] : [];
}

/** A priced book whose visits are charged, one patient after the other. */
export class ChargeBook {
  chart = '';
  private charts = 0;

  private constructor(
    readonly service: TestService,
    readonly owner: pg.Client,
    readonly s: PricedBook,
  ) {}

  static async open(prefix: string): Promise<ChargeBook> {
    const service = await TestService.start();
    const owner = await asOwner(service.databaseUrl);
    return new ChargeBook(service, owner, await openPricedBook(service, prefix));
  }

  async stop(): Promise<void> {
    await this.owner.end();
    await this.service.stop();
  }

  /** Somebody else, who was told what is left on the first of May. */
  async nextPatient(): Promise<void> {
    this.charts += 1;
    this.chart = `C-7${this.charts}`;
    await this.told('2026-05-01', { deductibleLeft: '50', maximumLeft: '1000' });
  }

  async told(asOf: string, left: object, planId = this.s.plan): Promise<void> {
    const body = { planId, chartReference: this.chart, asOf, ...left };
    await this.s.book.done('POST', '/plan-balances', body);
  }

  visit(visitedOn: string, restorations: object[] = [restoration(this.s)]): Promise<Visit> {
    return postVisit(this.s, { chartReference: this.chart, visitedOn, restorations });
  }

  record(body: object): Promise<Charges> {
    return this.s.book.done<Charges>('POST', '/charges', body);
  }

  preview(body: object): Promise<Charges> {
    return this.s.book.done<Charges>('POST', '/charges/preview', body);
  }

  async count(from: string): Promise<number> {
    const sql = `SELECT count(*)::int AS n FROM ${from}`;
    const { rows } = await this.owner.query<{ n: number }>(sql);
    return rows[0]?.n ?? -1;
  }
}
