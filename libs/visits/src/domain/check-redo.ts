import type { FieldError, IsoDate } from '#lib/platform';

/** What the book knows of a restoration that is said to be done again. */
export interface EarlierRestoration {
  readonly id: string;
  readonly visit_id: string;
  readonly visited_on: IsoDate;
  readonly chart_reference: string;
  readonly tooth: number;
  readonly reversed: boolean;
}

interface Redo {
  readonly redoOf: string | null;
  readonly tooth: number;
}

interface Context {
  readonly day: IsoDate;
  /** Null: not known yet, as in a preview. */
  readonly chartReference: string | null;
  readonly earlier: ReadonlyMap<string, EarlierRestoration>;
}

export type RedoProblem =
  | { readonly code: 'unknown'; readonly field: string }
  | { readonly code: 'does not fit'; readonly error: FieldError };

/** A restoration can only be done again on the same tooth of the same chart, on no earlier day. */
export function checkRedo(
  restorations: readonly Redo[],
  context: Context,
): RedoProblem | undefined {
  for (const [i, { redoOf, tooth }] of restorations.entries()) {
    if (redoOf === null) continue;
    const field = `restorations[${i}].redoOf`;
    const earlier = context.earlier.get(redoOf);
    if (!earlier) return { code: 'unknown', field };
    const message = whyNot(earlier, tooth, context);
    if (message !== undefined) return { code: 'does not fit', error: { field, message } };
  }
  return undefined;
}

function whyNot(earlier: EarlierRestoration, tooth: number, context: Context): string | undefined {
  const { day, chartReference: chart } = context;
  if (chart !== null && !sameText(chart, earlier.chart_reference)) {
    return 'names a restoration of another chart';
  }
  if (earlier.tooth !== tooth) return 'names a restoration of another tooth';
  if (earlier.reversed) return 'names a restoration of a visit that was reversed';
  return earlier.visited_on > day
    ? `names a later restoration, of ${earlier.visited_on}`
    : undefined;
}

function sameText(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}
