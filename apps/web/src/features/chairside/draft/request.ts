import { formatSurfaces, formatTooth, type ToothNotation } from '#lib/dentition';
import type { Shape } from '../../../api/client.js';
import type { RestorationDraft, VisitDraft } from './draft.js';
import { measuresOf, timesOf } from './measures.js';

type PlanBody = Shape<'PlanVisitDto'>;
type PostBody = Shape<'PostVisitDto'>;

/** Restorations by our keys, in the order in which they are sent. */
type Keys = readonly string[];

/** 'r1/a1/4/…' of the service is '<key>/a1/4/…' of ours: a removed restoration shifts no amounts. */
export function ownLine(line: string, keys: Keys): string {
  const found = /^r(\d+)\/(.*)$/.exec(line);
  const key = found && keys[Number(found[1]) - 1];
  return key ? `${key}/${found[2] ?? ''}` : line;
}

export function serviceLine(line: string, keys: Keys): string {
  const at = keys.findIndex((key) => line.startsWith(`${key}/`));
  const key = keys[at];
  return key === undefined ? line : `r${at + 1}/${line.slice(key.length + 1)}`;
}

type AsksForShades = (templateId: string, reason: string | null) => boolean;

/** Whether enough is said of a restoration to work out what it uses. */
function isPlannable(of: RestorationDraft, asksForShades: AsksForShades): boolean {
  const said = of.surfaces.length > 0 && of.reason !== null && of.templateId !== '';
  return said && (of.shades.length > 0 || !asksForShades(of.templateId, of.reason));
}

function restorationBody(of: RestorationDraft): Shape<'VisitRestorationInputDto'> {
  return {
    tooth: formatTooth(of.tooth, 'iso'),
    surfaces: formatSurfaces(of.surfaces),
    cavityClass: of.cavityClass,
    size: of.size,
    reason: of.reason ?? 'decay',
    templateId: of.templateId,
    shades: [...of.shades],
    attempts: of.attempts,
    ...measuresOf(of),
    redoOf: of.redoOf ?? null,
  };
}

const NOTATION: ToothNotation = 'iso';

export interface Planned<Body> {
  readonly body: Body;
  readonly keys: Keys;
  /** Our keys of the changed lines, in the order of `usage`. */
  readonly lines: readonly string[];
}

/** What the service is asked to work out: the restorations of which enough is said. */
export function planOf(
  draft: VisitDraft,
  today: string,
  asksForShades: AsksForShades,
): Planned<PlanBody> {
  return requestOf(draft, today, (each) => isPlannable(each, asksForShades));
}

function requestOf(
  draft: VisitDraft,
  today: string,
  counts: (of: RestorationDraft) => boolean,
): Planned<PlanBody> {
  const restorations = draft.restorations.filter(counts);
  const keys = restorations.map(({ key }) => key);
  const away = draft.restorations.filter((each) => !counts(each)).map(({ key }) => key);
  const amounts = Object.entries(draft.amounts).filter(
    ([line]) => !away.some((key) => line.startsWith(`${key}/`)),
  );
  const changed = amounts.map(([line, dispensed]) => ({
    line: serviceLine(line, keys),
    dispensed,
  }));
  const added = draft.added.map(({ consumableId, dispensed }) => ({ consumableId, dispensed }));
  return {
    keys,
    lines: [...amounts.map(([line]) => line), ...draft.added.map(({ key }) => key)],
    body: {
      visitedOn: draft.visitedOn || today,
      locationId: draft.locationId,
      toothNotation: NOTATION,
      withoutAnaesthetic: draft.withoutAnaesthetic ?? false,
      ...timesOf(draft),
      restorations: restorations.map(restorationBody),
      usage: [...changed, ...added],
      scanned: draft.scanned.map(({ lotId, holdingId }) => ({ lotId, holdingId })),
    },
  };
}

export function postOf(draft: VisitDraft, today: string): Planned<PostBody> {
  const { body, ...rest } = requestOf(draft, today, () => true);
  const { visitId, chartReference, dentistId } = draft;
  return {
    ...rest,
    body: {
      ...{ ...body, id: visitId, chartReference: chartReference.trim(), dentistId },
      ...(draft.bookedVisit === undefined ? {} : { bookedVisitId: draft.bookedVisit.id }),
    },
  };
}
