import { describe, expect, it } from '@jest/globals';
import type { BookedVisit } from '../api/list-booked-visits.js';
import { bodyOf, checkBooking, newValues, valuesOf } from './booking-values.js';

const WORDS = {
  ...{ required: 'required', past: 'past', count: 'count' },
  ...{ oneChart: 'one chart', needsTooth: 'needs a tooth' },
};
const said: BookedVisit['restorations'][number] = {
  template: { id: 't', name: 'Front filling' },
  ...{ tooth: '21', surfaces: 'MI', cavityClass: 'IV', size: 'large', reason: 'fracture' },
  shades: [{ id: 's', name: 'Paste', shade: 'Body 2' }],
};
const visit: BookedVisit = {
  ...{ id: 'b', day: '2026-05-05', chartReference: 'C-7', dentist: null, location: null },
  ...{
    externalReference: 'x',
    alike: 1,
    kept: 0,
    version: 1,
    state: 'booked',
    notRecordedYet: false,
  },
  ...{ restorations: [said], visits: [], dropped: null, bookedBy: 'Mira', bookedAt: '' },
};

describe('a booking as it is typed', () => {
  it('keeps what it says beside when it is changed elsewhere', () => {
    const moved = bodyOf({ ...valuesOf(visit), day: '2026-05-06' });
    expect(moved).toMatchObject({ day: '2026-05-06', chartReference: 'C-7', alike: 1 });
    expect(moved.restorations).toEqual([
      {
        ...{ templateId: 't', tooth: '21', surfaces: 'MI', cavityClass: 'IV' },
        ...{ size: 'large', reason: 'fracture', shades: ['s'] },
      },
    ]);
  });

  it('lets the class go with the place that it was for', () => {
    const values = valuesOf(visit);
    const restorations = values.restorations.map((each) => ({ ...each, surfaces: 'M' }));
    expect(bodyOf({ ...values, restorations }).restorations[0]).toMatchObject({
      ...{ surfaces: 'M', cavityClass: null, size: 'large' },
    });
  });

  it('is a template and nothing else when no more is known', () => {
    const values = newValues('2026-05-05', 'k');
    const restorations = values.restorations.map((each) => ({ ...each, templateId: 't' }));
    const body = bodyOf({ ...values, alike: '6', restorations });
    expect(body).toMatchObject({ alike: 6, chartReference: null, dentistId: null });
    expect(checkBooking({ ...values, alike: '6', restorations }, '2026-05-05', WORDS)).toEqual({});
  });

  it('is checked field by field', () => {
    const wrong = {
      ...newValues('2026-05-04', 'k'),
      ...{ alike: '2', chartReference: 'C-7' },
      restorations: [{ key: 'k', templateId: '', tooth: '', surfaces: 'M', before: null }],
    };
    expect(checkBooking(wrong, '2026-05-05', WORDS)).toEqual({
      ...{ day: 'past', alike: 'one chart' },
      'restorations[0].templateId': 'required',
      'restorations[0].tooth': 'needs a tooth',
    });
    expect(checkBooking({ ...wrong, alike: '201' }, '2026-05-05', WORDS).alike).toBe('count');
    expect(checkBooking({ ...wrong, alike: '1.5' }, '2026-05-05', WORDS).alike).toBe('count');
  });
});
