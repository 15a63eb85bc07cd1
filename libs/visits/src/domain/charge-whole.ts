import { type Quantity, quantityFromMicro } from '#lib/measure';
import { wholeDoses } from './issue-visit.js';
import { divide } from './share-dose.js';

interface PlannedUse {
  readonly consumableId: string;
  readonly placed: Quantity;
  readonly dispensed: Quantity;
  readonly sharesDose: boolean;
}

/**
 * What one visit would be charged for each planned line, if all of it had to be bought: whole single
 * doses, those that lines share once and divided among them. `doseOf` answers the content of a single
 * dose, null for what is not bought in doses.
 */
export function chargeWhole(
  lines: readonly PlannedUse[],
  doseOf: (consumableId: string) => Quantity | null,
): Quantity[] {
  const groups = new Map<string | number, number[]>();
  lines.forEach((line, i) => {
    const key = line.sharesDose ? line.consumableId : i;
    groups.set(key, [...(groups.get(key) ?? []), i]);
  });
  const charged = new Map<number, Quantity>();
  for (const positions of groups.values()) {
    const members = positions.flatMap((i) => lines[i] ?? []);
    const used = members.reduce((sum, line) => sum + line.dispensed, 0n);
    const dose = doseOf(members[0]?.consumableId ?? '');
    const sharers = members.map(({ dispensed, placed }) => ({ amount: dispensed, placed }));
    divide(sharers, [], wholeDoses(used, dose)).forEach(({ missing }, at) => {
      charged.set(positions[at] ?? 0, missing);
    });
  }
  return lines.map((_, i) => charged.get(i) ?? quantityFromMicro(0n));
}
