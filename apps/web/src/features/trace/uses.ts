import type { TracedUse, VisitTrace } from './api/trace-lot.js';

/** One row of a list of visits: one use of the lot, or a visit in which none of it counts. */
export interface UseRow {
  readonly id: string;
  readonly visit: VisitTrace;
  readonly use: TracedUse | undefined;
}

/** Uses first; a visit that scanned the lot when the book had none is listed as well. */
export function useRows(visits: readonly VisitTrace[]): UseRow[] {
  return visits.flatMap((visit): UseRow[] =>
    visit.uses.length === 0
      ? [{ id: visit.visitId, visit, use: undefined }]
      : visit.uses.map((use) => ({
          id: `${use.usageLineId} ${use.delivery.layerId} ${use.sureness}`,
          visit,
          use,
        })),
  );
}

interface Restored {
  readonly tooth: string;
  readonly surfaces: string;
}

/** '11 M, 21 MD'. */
export function teethOf(restorations: readonly Restored[]): string {
  return restorations.map(({ tooth, surfaces }) => `${tooth} ${surfaces}`.trim()).join(', ');
}
