import { add, formatMoney, money, ZERO_MONEY } from '#lib/measure';
import type { Preview, UsageLine } from '../api/preview-visit.js';
import { ownLine } from '../draft/request.js';

export interface OwnLine {
  /** Our key: of the planned line, or of the line that was added by hand. */
  readonly key: string;
  readonly of: UsageLine;
}

export type UsageGroup = {
  readonly id: string;
  readonly lines: readonly OwnLine[];
} & (
  | { readonly kind: 'restoration'; readonly restoration: number; readonly attempt: number }
  | { readonly kind: 'tooth'; readonly tooth: string }
  | { readonly kind: 'visit' }
  | { readonly kind: 'added' }
);

const RANK = { restoration: 0, tooth: 1, added: 2, visit: 3 } as const;

function groupOf(line: UsageLine): Pick<UsageGroup, 'id'> & Record<string, unknown> {
  const { restoration, tooth, attempt } = line;
  if (line.line === null) return { id: 'added', kind: 'added' };
  if (restoration !== null) {
    return { id: `${restoration}/${attempt}`, kind: 'restoration', restoration, attempt };
  }
  return tooth === null
    ? { id: 'visit', kind: 'visit' }
    : { id: `tooth ${tooth}`, kind: 'tooth', tooth };
}

/** The lines by what they are for; what the restorations themselves use comes first. */
export function groupUsage(
  { usage }: Preview,
  keys: readonly string[],
  added: readonly { readonly key: string }[],
): UsageGroup[] {
  const groups = new Map<string, { head: ReturnType<typeof groupOf>; lines: OwnLine[] }>();
  let hand = 0;
  for (const of of usage) {
    const head = groupOf(of);
    const key = of.line === null ? (added[hand++]?.key ?? `added ${hand}`) : ownLine(of.line, keys);
    const group = groups.get(head.id) ?? { head, lines: [] };
    group.lines.push({ key, of });
    groups.set(head.id, group);
  }
  return [...groups.values()]
    .map(({ head, lines }) => ({ ...head, lines }) as unknown as UsageGroup)
    .toSorted((a, b) => RANK[a.kind] - RANK[b.kind]);
}

export function costOf({ lines }: Pick<UsageGroup, 'lines'>): string {
  return formatMoney(lines.reduce((sum, { of }) => add(sum, money(of.cost)), ZERO_MONEY));
}

export function shortOf({ lines }: Pick<UsageGroup, 'lines'>): number {
  return lines.filter(({ of }) => of.shortfall !== '0').length;
}
