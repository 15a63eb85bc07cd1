import type { Shape } from '../../api/client.js';

export type Reason = Shape<'RestorationSummaryDto'>['reason'];

export const REASONS = ['decay', 'fracture', 'wear', 'cosmetic'] as const satisfies Reason[];

/** Which restorations are meant. */
export interface Choice {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly templateId?: string | undefined;
  readonly reason?: Reason | undefined;
  readonly dentistId?: string | undefined;
}

/** The parts that are given, as the service wants them. */
export function chosen<T extends object>(search: T): { [K in keyof T]: NonNullable<T[K]> } {
  const given = Object.entries(search).filter(([, value]) => value !== undefined);
  return Object.fromEntries(given) as { [K in keyof T]: NonNullable<T[K]> };
}

/** Of an address that may hold more than a choice. */
export function choiceOf({ from, to, templateId, reason, dentistId }: Choice): Choice {
  return { from, to, templateId, reason, dentistId };
}

/** '/api/x.csv?from=…': an address for a link. */
export function addressOf(path: string, search: Readonly<Record<string, string | undefined>>) {
  const words = new URLSearchParams(chosen(search) as Record<string, string>).toString();
  return words === '' ? path : `${path}?${words}`;
}
