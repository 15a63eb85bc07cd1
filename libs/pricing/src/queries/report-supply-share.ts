import { Injectable } from '@nestjs/common';
import { shareOf } from '#lib/costing';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { type Actor, type Tx, UnitOfWork } from '#lib/platform';
import { microOf, NOT_REVERSED } from '#lib/stock';
import type {
  SupplyFiguresDto,
  SupplyMonthDto,
  SupplyShareDto,
  SupplyShareQueryDto,
} from '../http/supply-share.dto.js';
import { CELLS, cellValues, type PriceSource } from './contribution-cells.js';

const USED = `${CELLS}
SELECT to_char(month, 'YYYY-MM') AS month, source, sum(restorations)::int AS restorations,
       sum(fee) AS fees, sum(write_off) AS write_off, sum(material) AS material
FROM cells GROUP BY month, source`;

const BOUGHT = `
SELECT to_char(date_trunc('month', d.received_on), 'YYYY-MM') AS month, sum(d.landed_total) AS cost
FROM deliveries d
WHERE d.practice_id = $1 AND d.reversed_at IS NULL
  AND ($2::date IS NULL OR d.received_on >= $2) AND ($3::date IS NULL OR d.received_on <= $3)
GROUP BY date_trunc('month', d.received_on)`;

const WRITTEN_OFF = `
SELECT to_char(date_trunc('month', m.occurred_on), 'YYYY-MM') AS month, sum(m.cost) AS cost
FROM movements m
WHERE m.practice_id = $1 AND m.to_account = 'waste' AND ${NOT_REVERSED}
  AND ($2::date IS NULL OR m.occurred_on >= $2) AND ($3::date IS NULL OR m.occurred_on <= $3)
GROUP BY date_trunc('month', m.occurred_on)`;

interface UsedRow {
  readonly month: string;
  readonly source: PriceSource;
  readonly restorations: number;
  readonly fees: string;
  readonly write_off: string;
  readonly material: string;
}

interface SpentRow {
  readonly month: string;
  readonly cost: string;
}

interface Found {
  readonly used: readonly UsedRow[];
  readonly bought: readonly SpentRow[];
  readonly writtenOff: readonly SpentRow[];
}

/** What supplies cost beside what was asked for the work, month by month. */
@Injectable()
export class ReportSupplyShare {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: SupplyShareQueryDto): Promise<SupplyShareDto> {
    const base = query.shareOf ?? 'fees';
    const found = await this.uow.read(actor.practiceId, (tx) => find(tx, query));
    const all = [...found.used, ...found.bought, ...found.writtenOff];
    const months = [...new Set(all.map((row) => row.month))].sort().reverse();
    const of = (month: string): Found => {
      const only = <T extends { readonly month: string }>(rows: readonly T[]) =>
        rows.filter((row) => row.month === month);
      const { used, bought, writtenOff } = found;
      return { used: only(used), bought: only(bought), writtenOff: only(writtenOff) };
    };
    return {
      currency: actor.currency,
      shareOf: base,
      rows: months.map((month): SupplyMonthDto => ({ month, ...toFigures(of(month), base) })),
      totals: toFigures(found, base),
    };
  }
}

async function find(tx: Tx, query: SupplyShareQueryDto): Promise<Found> {
  const values = [tx.practiceId, query.from ?? null, query.to ?? null];
  return {
    used: await tx.query<UsedRow>(USED, await cellValues(tx, query)),
    bought: await tx.query<SpentRow>(BOUGHT, values),
    writtenOff: await tx.query<SpentRow>(WRITTEN_OFF, values),
  };
}

function toFigures(found: Found, base: SupplyShareDto['shareOf']): SupplyFiguresDto {
  const listed = found.used.filter((row) => row.source === 'listed');
  const none = found.used.filter((row) => row.source === 'none');
  const counted = found.used.filter((row) => row.source !== 'none');
  const fees = added(counted, (row) => row.fees);
  const writeOff = added(counted, (row) => row.write_off);
  const material = added(counted, (row) => row.material);
  const bought = added(found.bought, (row) => row.cost);
  const waste = added(found.writtenOff, (row) => row.cost);
  const whole = base === 'fees' ? fees : fees - writeOff;
  return {
    restorations: countOf(counted),
    charged: countOf(counted) - countOf(listed),
    fromFeeList: countOf(listed),
    withoutFee: countOf(none),
    fees: text(fees),
    writeOff: text(writeOff),
    income: text(fees - writeOff),
    feeListFees: text(added(listed, (row) => row.fees)),
    material: text(material),
    materialShare: part(material, whole),
    withoutFeeMaterial: text(added(none, (row) => row.material)),
    bought: text(bought),
    boughtShare: part(bought, whole),
    waste: text(waste),
    wasteShare: part(waste, whole),
  };
}

function countOf(rows: readonly UsedRow[]): number {
  return rows.reduce((sum, row) => sum + row.restorations, 0);
}

function added<T>(rows: readonly T[], of: (row: T) => string): bigint {
  return rows.reduce((sum, row) => sum + microOf(of(row)), 0n);
}

/** With four digits after the point. */
function part(amount: bigint, whole: bigint): string | null {
  const share = shareOf(amount, whole);
  return share === null ? null : formatMoney(moneyFromMicro(share), 4);
}

function text(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}
