import { money, quantity } from '#lib/measure';
import type { Candidate } from './candidate.js';
import type { IssueRequest } from './choose-stock.js';

/** A sealed multi-use container with a known lot in the room of use, changed as a test needs it. */
export function candidate(changes: Partial<Candidate> & { holdingId: string }): Candidate {
  return {
    layerId: `layer of ${changes.holdingId}`,
    consumableId: 'paste',
    lotId: `lot of ${changes.holdingId}`,
    lotNumber: 'L1',
    lotStatus: 'released',
    locationId: 'room',
    distance: 0,
    receivedOn: '2026-01-05',
    labelExpiry: '2027-12-31',
    openedOn: null,
    useBy: null,
    dispensing: 'by-piece',
    content: quantity('1'),
    onHand: quantity('10'),
    received: quantity('10'),
    landedCost: money('100'),
    outQuantity: quantity('0'),
    outCost: money('0'),
    ...changes,
  };
}

let ids = 0;

/** A visit in the room that needs so much paste, changed as a test needs it. */
export function request(changes: Partial<IssueRequest> & { need: string }): IssueRequest {
  const { need, ...rest } = changes;
  return {
    day: '2026-05-04',
    locationId: 'room',
    needs: [{ consumableId: 'paste', quantity: quantity(need) }],
    scanned: new Set(),
    ifOpenedUseBy: (c) => c.labelExpiry,
    newId: () => {
      ids += 1;
      return `opened-${ids}`;
    },
    ...rest,
  };
}
