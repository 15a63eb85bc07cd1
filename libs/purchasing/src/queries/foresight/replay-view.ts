import { formatMoney, formatQuantity, type Money } from '#lib/measure';
import type { StockConsumableDto } from '#lib/stock';
import { isoDay } from '../../domain/forecast/calendar.js';
import type {
  ReplayedItem,
  ReplayedShelf,
  ReplayedSide,
  ReplayedSums,
} from '../../domain/foresight/replay-report.js';
import { RECKON_EVERY_DAYS } from '../../domain/foresight/replay-shelf.js';
import type { PlanningSettings } from '../../domain/planning/planning-settings.js';
import type {
  ReplayedItemDto,
  ReplayResultDto,
  ReplaySideDto,
  ReplaySumsDto,
} from '../../http/foresight/replays.dto.js';

/** The answer to a replay, as it is stored and shown. */
export function replayResult(
  found: ReplayedShelf,
  about: {
    readonly currency: string;
    readonly settings: PlanningSettings;
    readonly consumables: ReadonlyMap<string, StockConsumableDto>;
  },
): ReplayResultDto {
  const { serviceMeasure, serviceLevel, reviewDays } = about.settings;
  return {
    currency: about.currency,
    settings: { serviceMeasure, serviceLevel, reviewDays, reckonDays: RECKON_EVERY_DAYS },
    computed: sumsDto(found.computed),
    old: sumsDto(found.old),
    items: [...found.items].sort(byDifference).map((item) => itemDto(item, about.consumables)),
    weeks: found.weeks.map(({ lastDay, computed, old }) => ({
      ...{ day: isoDay(lastDay), computed: formatMoney(computed), old: formatMoney(old) },
    })),
    ...{ notUsed: found.notUsed, notBought: found.notBought, withoutPrice: found.withoutPrice },
  };
}

/** Days missing first, then waste, then stock; what differs most first, ties by id. */
function byDifference(a: ReplayedItem, b: ReplayedItem): number {
  const days = ({ computed, old }: ReplayedItem) =>
    Math.abs(old.stockOutDays - computed.stockOutDays);
  if (days(a) !== days(b)) return days(b) - days(a);
  const gap = ({ computed, old }: ReplayedItem, of: 'wastedValue' | 'averageValue') => {
    const difference = (old[of] ?? 0n) - (computed[of] ?? 0n);
    return difference < 0n ? -difference : difference;
  };
  for (const sum of ['wastedValue', 'averageValue'] as const) {
    if (gap(a, sum) !== gap(b, sum)) return gap(a, sum) < gap(b, sum) ? 1 : -1;
  }
  return a.consumableId < b.consumableId ? -1 : 1;
}

function itemDto(
  item: ReplayedItem,
  consumables: ReadonlyMap<string, StockConsumableDto>,
): ReplayedItemDto {
  const consumable = consumables.get(item.consumableId);
  if (!consumable) throw new Error('A replayed item is no consumable');
  const { oldRule, daysWithUse } = item;
  return {
    ...{ consumable, oldRule, daysWithUse },
    ...{ computed: sideDto(item.computed), old: sideDto(item.old) },
  };
}

function sideDto(side: ReplayedSide): ReplaySideDto {
  return {
    stockOutDays: side.stockOutDays,
    unmet: formatQuantity(side.unmet),
    wasted: formatQuantity(side.wasted),
    wastedValue: moneyOrNull(side.wastedValue),
    averageStock: formatQuantity(side.averageStock),
    averageValue: moneyOrNull(side.averageValue),
    orders: side.orders,
  };
}

function sumsDto(sums: ReplayedSums): ReplaySumsDto {
  const { stockOutDays, itemsOut, orders, sent } = sums;
  return {
    ...{ stockOutDays, itemsOut, orders, sent },
    freight: formatMoney(sums.freight),
    wastedValue: formatMoney(sums.wastedValue),
    averageValue: formatMoney(sums.averageValue),
  };
}

function moneyOrNull(money: Money | null): string | null {
  return money === null ? null : formatMoney(money);
}
