import { Injectable } from '@nestjs/common';
import { formatMoney, type Money, moneyFromMicro } from '#lib/measure';
import { type Actor, Clock, invalidFields, UnitOfWork } from '#lib/platform';
import { capacityOf } from '../app/list-cost-rates.js';
import { type CostRateRow, loadCostRates } from '../db/cost-rates.js';
import { capacityOfDays, costOfMinutes } from '../domain/chair-time.js';
import { GROUPS, type Group, parseGroupBy } from '../domain/group-by.js';
import { listsBy } from '../domain/lists-by.js';
import { periodOf } from '../domain/period.js';
import { type Segment, segmentsOf } from '../domain/rate-segments.js';
import { shareOf } from '../domain/variance.js';
import type { ChairTimeDto, ChairTimeRowDto, SuppliedDto } from '../http/chair-time.dto.js';
import type { ChairTimeQueryDto } from '../http/costing-queries.dto.js';

const KEYS: Record<Group, string> = {
  template: 'template_id',
  reason: 'reason',
  dentist: 'dentist_id',
  month: 'month',
};

interface RatedRow {
  readonly segment: number;
  readonly template_id?: string;
  readonly template_name?: string;
  readonly reason?: string;
  readonly dentist_id?: string;
  readonly dentist_name?: string;
  readonly month?: string;
  readonly restorations: number;
  readonly minutes: string;
}

interface Rate {
  readonly validFrom: string;
  readonly row: CostRateRow;
}

type RateSegment = Segment<Rate>;

function minutesSql(groups: readonly Group[]): string {
  const keys = groups.map((group) => KEYS[group]).join(', ');
  const names = [
    ['template', 't.name AS template_name', 'JOIN procedure_templates t ON t.id = f.template_id'],
    ['dentist', 'p.display_name AS dentist_name', 'JOIN people p ON p.id = f.dentist_id'],
  ].filter(([group]) => groups.some((each) => each === group));
  return `
WITH rated AS (
  SELECT s.n::int AS segment, r.template_id, r.reason, v.dentist_id,
         to_char(v.visited_on, 'YYYY-MM') AS month, r.minutes
  FROM unnest($2::date[], $3::date[]) WITH ORDINALITY AS s(first, last, n)
  JOIN visits v ON v.practice_id = $1 AND v.visited_on BETWEEN s.first AND s.last
  JOIN restorations r ON r.visit_id = v.id
  WHERE v.reversed_at IS NULL
), figures AS (
  SELECT segment, ${keys}, count(*)::int AS restorations, sum(minutes) AS minutes
  FROM rated GROUP BY segment, ${keys}
)
SELECT ${['f.*', ...names.map(([, name]) => name)].join(', ')}
FROM figures f ${names.map(([, , join]) => join).join(' ')}
ORDER BY ${keys}, segment`;
}

/** Chair minutes at the capacity cost rate of their day, and idle capacity beside them. */
@Injectable()
export class ReportChairTime {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: ChairTimeQueryDto): Promise<ChairTimeDto> {
    const groups = parseGroupBy(query.groupBy);
    if (!groups) {
      const message = `must be one or more of ${GROUPS.join(', ')}, each once, with commas`;
      throw invalidFields([{ field: 'groupBy', message }]);
    }
    const { from, to } = periodOf(query, this.clock.today(actor.timeZone));
    return this.uow.read(actor.practiceId, async (tx) => {
      const rates = (await loadCostRates(tx)).map((row) => ({ validFrom: row.valid_from, row }));
      const segments = segmentsOf(rates, from, to);
      const found = await tx.query<RatedRow>(minutesSql(groups), [
        actor.practiceId,
        segments.map((segment) => segment.first),
        segments.map((segment) => segment.last),
      ]);
      const rows = rowsOf(found, segments);
      const period = { currency: actor.currency, from, to, groupBy: [...groups] };
      return { ...period, rows: rows.map(shown), ...totalsOf(rows, segments) };
    });
  }
}

interface CostedRow {
  readonly keys: RatedRow;
  readonly restorations: number;
  readonly minutes: bigint;
  readonly unratedMinutes: bigint;
  readonly cost: bigint;
}

function rowsOf(found: readonly RatedRow[], segments: readonly RateSegment[]): CostedRow[] {
  const keyOf = ({ template_id, reason, dentist_id, month }: RatedRow) =>
    JSON.stringify([template_id, reason, dentist_id, month]);
  return [...listsBy(found, keyOf).values()].flatMap((list) => {
    const [keys] = list;
    return keys ? [list.reduce((row, part) => added(row, part, segments), nothing(keys))] : [];
  });
}

function nothing(keys: RatedRow): CostedRow {
  return { keys, restorations: 0, minutes: 0n, unratedMinutes: 0n, cost: 0n };
}

function added(row: CostedRow, part: RatedRow, segments: readonly RateSegment[]): CostedRow {
  const minutes = BigInt(part.minutes);
  const rate = segments[part.segment - 1]?.rate;
  const cost = rate ? costOfMinutes(capacityOf(rate.row), minutes) : 0n;
  return {
    keys: row.keys,
    restorations: row.restorations + part.restorations,
    minutes: row.minutes + minutes,
    unratedMinutes: row.unratedMinutes + (rate ? 0n : minutes),
    cost: row.cost + cost,
  };
}

function shown(row: CostedRow): ChairTimeRowDto {
  const { keys } = row;
  return {
    templateId: keys.template_id ?? null,
    templateName: keys.template_name ?? null,
    reason: keys.reason ?? null,
    dentistId: keys.dentist_id ?? null,
    dentistName: keys.dentist_name ?? null,
    month: keys.month ?? null,
    restorations: row.restorations,
    minutes: Number(row.minutes),
    cost: formatMoney(moneyFromMicro(row.cost)),
    minutesWithoutRate: Number(row.unratedMinutes),
  };
}

function totalsOf(
  rows: readonly CostedRow[],
  segments: readonly RateSegment[],
): Pick<ChairTimeDto, 'totals' | 'capacity'> {
  const sum = (of: (row: CostedRow) => bigint) => rows.reduce((total, row) => total + of(row), 0n);
  const [minutes, unrated] = [sum((row) => row.minutes), sum((row) => row.unratedMinutes)];
  const cost = moneyFromMicro(sum((row) => row.cost));
  return {
    totals: {
      restorations: rows.reduce((total, row) => total + row.restorations, 0),
      minutes: Number(minutes),
      cost: formatMoney(cost),
      minutesWithoutRate: Number(unrated),
    },
    capacity: suppliedOf(segments, minutes - unrated, cost),
  };
}

/** What the chairs of the period cost, taken apart into used and idle. */
function suppliedOf(
  segments: readonly RateSegment[],
  usedMinutes: bigint,
  usedCost: Money,
): SuppliedDto {
  let [minutes, cost] = [0n, 0n];
  for (const { rate, days } of segments) {
    if (!rate) continue;
    const part = capacityOfDays(capacityOf(rate.row), days);
    minutes += part.practicalMinutes;
    cost += part.yearlyCost;
  }
  const share = shareOf(usedMinutes, minutes);
  return {
    minutes: Number(minutes),
    cost: formatMoney(moneyFromMicro(cost)),
    usedMinutes: Number(usedMinutes),
    usedCost: formatMoney(usedCost),
    usedShare: share === null ? null : formatMoney(moneyFromMicro(share), 4),
    idleMinutes: Number(minutes - usedMinutes),
    idleCost: formatMoney(moneyFromMicro(cost - usedCost)),
  };
}
