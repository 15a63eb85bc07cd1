import { Injectable } from '@nestjs/common';
import { formatMoney, money, moneyFromMicro } from '#lib/measure';
import { type Actor, Clock, invalidFields, UnitOfWork } from '#lib/platform';
import { capacityOf } from '../app/list-cost-rates.js';
import { type CostRateRow, loadCostRates } from '../db/cost-rates.js';
import { type Capacity, capacityOfDays, costOfMinutes } from '../domain/chair-time.js';
import { GROUPS, type Group, parseGroupBy } from '../domain/group-by.js';
import { listsBy } from '../domain/lists-by.js';
import { periodOf } from '../domain/period.js';
import { type Segment, segmentsOf } from '../domain/rate-segments.js';
import { shareOf } from '../domain/variance.js';
import type {
  ChairTimeDto,
  ChairTimeFiguresDto,
  ChairTimeRowDto,
  SuppliedDto,
} from '../http/chair-time.dto.js';
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
  readonly assistant_minutes: string;
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
         to_char(v.visited_on, 'YYYY-MM') AS month, r.minutes,
         coalesce(r.assistant_minutes, 0) AS assistant_minutes
  FROM unnest($2::date[], $3::date[]) WITH ORDINALITY AS s(first, last, n)
  JOIN visits v ON v.practice_id = $1 AND v.visited_on BETWEEN s.first AND s.last
  JOIN restorations r ON r.visit_id = v.id
  WHERE v.reversed_at IS NULL
), figures AS (
  SELECT segment, ${keys}, count(*)::int AS restorations, sum(minutes) AS minutes,
         sum(assistant_minutes) AS assistant_minutes
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
      return {
        ...period,
        rows: rows.map(shown),
        ...totalsOf(rows, segments),
        assistantCapacity: assistantsOf(found, segments),
      };
    });
  }
}

interface CostedRow {
  readonly keys: RatedRow;
  readonly restorations: number;
  readonly minutes: bigint;
  readonly unratedMinutes: bigint;
  readonly cost: bigint;
  readonly assistantMinutes: bigint;
  readonly unratedAssistantMinutes: bigint;
  readonly assistantCost: bigint;
}

const ZERO = {
  restorations: 0,
  minutes: 0n,
  unratedMinutes: 0n,
  cost: 0n,
  assistantMinutes: 0n,
  unratedAssistantMinutes: 0n,
  assistantCost: 0n,
};

function rowsOf(found: readonly RatedRow[], segments: readonly RateSegment[]): CostedRow[] {
  const keyOf = ({ template_id, reason, dentist_id, month }: RatedRow) =>
    JSON.stringify([template_id, reason, dentist_id, month]);
  return [...listsBy(found, keyOf).values()].flatMap((list) => {
    const [keys] = list;
    const nothing: CostedRow[] = keys ? [{ keys, ...ZERO }] : [];
    return nothing.map((row) => list.reduce((sum, part) => added(sum, part, segments), row));
  });
}

function added(row: CostedRow, part: RatedRow, segments: readonly RateSegment[]): CostedRow {
  const minutes = BigInt(part.minutes);
  const rate = segments[part.segment - 1]?.rate;
  const cost = rate ? costOfMinutes(capacityOf(rate.row), minutes) : 0n;
  const assistants = BigInt(part.assistant_minutes);
  const perMinute = rate?.row.assistant_rate ?? null;
  return {
    keys: row.keys,
    restorations: row.restorations + part.restorations,
    minutes: row.minutes + minutes,
    unratedMinutes: row.unratedMinutes + (rate ? 0n : minutes),
    cost: row.cost + cost,
    assistantMinutes: row.assistantMinutes + assistants,
    unratedAssistantMinutes: row.unratedAssistantMinutes + (perMinute === null ? assistants : 0n),
    assistantCost: row.assistantCost + money(perMinute ?? '0') * assistants,
  };
}

function figures(row: Omit<CostedRow, 'keys'>): ChairTimeFiguresDto {
  return {
    restorations: row.restorations,
    minutes: Number(row.minutes),
    cost: formatMoney(moneyFromMicro(row.cost)),
    minutesWithoutRate: Number(row.unratedMinutes),
    assistantMinutes: Number(row.assistantMinutes),
    assistantCost: formatMoney(moneyFromMicro(row.assistantCost)),
    assistantMinutesWithoutRate: Number(row.unratedAssistantMinutes),
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
    ...figures(row),
  };
}

function totalsOf(
  rows: readonly CostedRow[],
  segments: readonly RateSegment[],
): Pick<ChairTimeDto, 'totals' | 'capacity'> {
  const totals = rows.reduce((sum, { keys: _, ...row }) => {
    return {
      restorations: sum.restorations + row.restorations,
      minutes: sum.minutes + row.minutes,
      unratedMinutes: sum.unratedMinutes + row.unratedMinutes,
      cost: sum.cost + row.cost,
      assistantMinutes: sum.assistantMinutes + row.assistantMinutes,
      unratedAssistantMinutes: sum.unratedAssistantMinutes + row.unratedAssistantMinutes,
      assistantCost: sum.assistantCost + row.assistantCost,
    };
  }, ZERO);
  const used = { minutes: totals.minutes - totals.unratedMinutes, cost: totals.cost };
  return { totals: figures(totals), capacity: suppliedOf(capacities(segments, chairs), used) };
}

function chairs({ row }: Rate): Capacity {
  return capacityOf(row);
}

/** Null where the practice has not said how long its assistants can work. */
function assistants({ row }: Rate): Capacity | null {
  const { assistant_rate: rate, assistant_practical_minutes: minutes } = row;
  if (rate === null || minutes === null) return null;
  const practicalMinutes = BigInt(minutes);
  return { yearlyCost: moneyFromMicro(money(rate) * practicalMinutes), practicalMinutes };
}

/** What of the capacity a rate states each part of the period has. */
function capacities(segments: readonly RateSegment[], of: (rate: Rate) => Capacity | null) {
  return segments.flatMap(({ rate, days }) => {
    const capacity = rate && of(rate);
    return capacity ? [capacityOfDays(capacity, days)] : [];
  });
}

/** The same for assistants, over the days for which their capacity is known; null without any. */
function assistantsOf(
  found: readonly RatedRow[],
  segments: readonly RateSegment[],
): SuppliedDto | null {
  const supplied = capacities(segments, assistants);
  if (supplied.length === 0) return null;
  const used = { minutes: 0n, cost: 0n };
  for (const { segment, assistant_minutes } of found) {
    const rate = segments[segment - 1]?.rate;
    if (!rate || assistants(rate) === null) continue;
    used.minutes += BigInt(assistant_minutes);
    used.cost += BigInt(assistant_minutes) * money(rate.row.assistant_rate ?? '0');
  }
  return suppliedOf(supplied, used);
}

/** What the capacity of the period cost, taken apart into used and idle. */
function suppliedOf(
  supplied: readonly Capacity[],
  used: { readonly minutes: bigint; readonly cost: bigint },
): SuppliedDto {
  const minutes = supplied.reduce((sum, part) => sum + part.practicalMinutes, 0n);
  const cost = supplied.reduce((sum, part) => sum + part.yearlyCost, 0n);
  const share = shareOf(used.minutes, minutes);
  return {
    minutes: Number(minutes),
    cost: formatMoney(moneyFromMicro(cost)),
    usedMinutes: Number(used.minutes),
    usedCost: formatMoney(moneyFromMicro(used.cost)),
    usedShare: share === null ? null : formatMoney(moneyFromMicro(share), 4),
    idleMinutes: Number(minutes - used.minutes),
    idleCost: formatMoney(moneyFromMicro(cost - used.cost)),
  };
}
