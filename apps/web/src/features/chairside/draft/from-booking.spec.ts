import { describe, expect, it } from '@jest/globals';
import type { BookedVisit } from '../api/get-booked-visit.js';
import { newDraft } from './draft.js';
import { fromBooking } from './from-booking.js';
import { postOf } from './request.js';

const fresh = newDraft('v', { dentistId: 'usual dentist', locationId: 'usual room' });
const about = { notation: 'universal', newKey: () => 'k' } as const;
const open: BookedVisit['restorations'][number] = {
  template: { id: 't', name: 'Front filling' },
  ...{ tooth: null, surfaces: null, cavityClass: null, size: null, reason: null, shades: [] },
};
const booking: BookedVisit = {
  ...{ id: 'b', day: '2026-05-05', chartReference: 'C-7', dentist: null, location: null },
  ...{
    externalReference: null,
    alike: 1,
    kept: 0,
    version: 1,
    state: 'booked',
    notRecordedYet: false,
  },
  ...{ restorations: [open], visits: [], dropped: null, bookedBy: 'Mira', bookedAt: '' },
};

describe('a visit begun from its booking', () => {
  it('says what the booking says, tooth by tooth', () => {
    const said: BookedVisit['restorations'][number] = {
      ...{ ...open, tooth: '8', surfaces: 'MI' },
      ...{ reason: 'fracture', size: 'large' },
      shades: [{ id: 's', name: 'Paste', shade: null }],
    };
    const room = { id: 'r', name: 'Room 2' };
    const restorations = [said];
    const draft = fromBooking(fresh, { ...booking, location: room, restorations }, about);
    expect(draft).toMatchObject({
      ...{ chartReference: 'C-7', dentistId: 'usual dentist', locationId: 'r' },
      bookedVisit: { id: 'b', day: '2026-05-05', templateId: '' },
    });
    expect(draft.restorations).toMatchObject([
      {
        ...{ tooth: 11, surfaces: ['M', 'I'], cavityClass: 'IV', templateId: 't' },
        ...{ reason: 'fracture', size: 'large', shades: ['s'] },
      },
    ]);
    expect(postOf(draft, '2026-05-05').body).toMatchObject({ bookedVisitId: 'b' });
  });

  it('leaves open what nobody said, and offers the template', () => {
    const draft = fromBooking(fresh, { ...booking, chartReference: null, alike: 6 }, about);
    expect(draft).toMatchObject({ chartReference: '', restorations: [] });
    expect(draft.bookedVisit?.templateId).toBe('t');
    expect(postOf(fresh, '2026-05-05').body.bookedVisitId).toBeUndefined();
  });
});
