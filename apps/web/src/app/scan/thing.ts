import type { Shape } from '../../api/client.js';
import type { Reading } from './read-scan.js';

export type Match = Shape<'LabelMatchDto'>;

/** What a label stands on, as far as the practice knows it. What is not known is null. */
export interface ScannedThing {
  readonly name: string | null;
  readonly consumableId: string | null;
  readonly presentationId: string | null;
  readonly lotNumber: string | null;
  readonly expiresOn: string | null;
  readonly lotId: string | null;
  /** An opened container with a label of the practice's own. */
  readonly holdingId: string | null;
  readonly locationId: string | null;
}

/** Of a label that the practice printed. */
export function thingOfOwn(own: Shape<'OwnLabelDto'>): ScannedThing {
  const { consumableId, presentationId, lotNumber, expiresOn, lotId } = own;
  const isPlace = own.kind === 'location';
  const product = [own.consumableName, own.variant].filter((part) => part !== null).join(', ');
  return {
    ...{ consumableId, presentationId, lotNumber, expiresOn, lotId },
    name: isPlace ? own.locationName : product,
    holdingId: own.kind === 'container' ? own.holdingId : null,
    locationId: isPlace ? own.locationId : null,
  };
}

/** Of a label of a maker, with the presentation that it is of; without one, only what it says. */
export function thingOf(reading: Reading, match: Match | undefined): ScannedThing {
  return {
    name: match?.consumableName ?? null,
    consumableId: match?.consumableId ?? null,
    presentationId: match?.presentationId ?? null,
    lotNumber: reading.label?.lot ?? null,
    expiresOn: reading.label?.expiry ?? null,
    lotId: match?.lotId ?? null,
    ...{ holdingId: null, locationId: null },
  };
}

/** The presentations that are still bought; the others only where there is nothing else. */
export function possibleMatches({ matches }: Reading): readonly Match[] {
  const active = matches.filter((match) => match.active);
  return active.length > 0 ? active : matches.slice(0, 1);
}
