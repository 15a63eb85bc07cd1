import type { UsageLine } from './api/get-visit.js';

export interface LineGroup {
  readonly id: string;
  readonly restoration: number | null;
  readonly tooth: string | null;
  readonly attempt: number;
  readonly lines: readonly UsageLine[];
}

/** The lines by what they are for: each restoration and retake, each tooth, then the whole visit. */
export function groupLines(lines: readonly UsageLine[]): LineGroup[] {
  const groups = new Map<string, LineGroup>();
  for (const line of lines) {
    const { restoration, tooth, attempt } = line;
    const id = [restoration ?? 'shared', tooth ?? '', attempt].join('/');
    const before = groups.get(id)?.lines ?? [];
    groups.set(id, { id, restoration, tooth, attempt, lines: [...before, line] });
  }
  const rank = (group: LineGroup) => {
    if (group.restoration !== null) return group.restoration * 100 + group.attempt;
    return group.tooth === null ? 100_000 : 10_000;
  };
  return [...groups.values()].toSorted((a, b) => rank(a) - rank(b));
}
