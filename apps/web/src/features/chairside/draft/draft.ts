import type { CavityClass, CavitySize, IsoTooth, Reason, Surface } from '#lib/dentition';

export interface RestorationDraft {
  /** Ours; restorations are counted only when the visit is sent. */
  readonly key: string;
  readonly tooth: IsoTooth;
  readonly surfaces: readonly Surface[];
  readonly cavityClass: CavityClass | null;
  /** The person chose the class; it no longer follows the surfaces. */
  readonly classChosen: boolean;
  readonly size: CavitySize;
  readonly reason: Reason | null;
  readonly templateId: string;
  readonly shades: readonly string[];
  readonly attempts: number;
  /** As typed; left out where the planning values of class and size are good enough. */
  readonly lengthMm?: string | undefined;
  readonly widthMm?: string | undefined;
  readonly depthMm?: string | undefined;
  /** An earlier restoration that it does again. */
  readonly redoOf?: string | undefined;
}

export interface AddedLine {
  readonly key: string;
  readonly consumableId: string;
  readonly name: string;
  readonly unit: string;
  readonly dispensed: string;
}

export interface ScannedLot {
  readonly lotId: string;
  readonly holdingId: string | null;
  readonly lotNumber: string | null;
  readonly consumableId: string;
  readonly name: string;
}

/** A visit as far as it has been entered. */
export interface VisitDraft {
  /** Made here: whatever else goes wrong, this visit can be in the book only once. */
  readonly visitId: string;
  /** It was sent, and nobody knows whether it arrived. */
  readonly maybeSent: boolean;
  readonly chartReference: string;
  readonly dentistId: string;
  readonly locationId: string;
  /** Empty: today. */
  readonly visitedOn: string;
  readonly restorations: readonly RestorationDraft[];
  /** Of the whole visit, as typed; left out where it took what the templates plan. */
  readonly minutes?: string | undefined;
  readonly assistantMinutes?: string | undefined;
  readonly withoutAnaesthetic?: boolean | undefined;
  /** Amounts that differ from the plan, by our key of the line. */
  readonly amounts: Readonly<Record<string, string>>;
  readonly added: readonly AddedLine[];
  readonly scanned: readonly ScannedLot[];
  /** The booking that it keeps, and the template that is offered for its teeth. */
  readonly bookedVisit?:
    | { readonly id: string; readonly day: string; readonly templateId: string }
    | undefined;
}

export interface Place {
  readonly dentistId: string;
  readonly locationId: string;
}

export function newDraft(visitId: string, place: Place, chartReference = ''): VisitDraft {
  return {
    visitId,
    maybeSent: false,
    chartReference,
    ...place,
    visitedOn: '',
    restorations: [],
    amounts: {},
    added: [],
    scanned: [],
  };
}

export function newRestoration(key: string, tooth: IsoTooth): RestorationDraft {
  return {
    key,
    tooth,
    surfaces: [],
    cavityClass: null,
    classChosen: false,
    size: 'medium',
    reason: null,
    templateId: '',
    shades: [],
    attempts: 1,
  };
}

/** Nothing of it would be missed. */
export function isBlank(draft: VisitDraft): boolean {
  return draft.chartReference.trim() === '' && draft.restorations.length === 0;
}
