import type { Shape } from '../../../api/client.js';
import type { BookedVisit } from '../api/list-booked-visits.js';

export interface RestorationValues {
  readonly key: string;
  readonly templateId: string;
  readonly tooth: string;
  readonly surfaces: string;
  /** Of a booking that is changed: what it says beside. */
  readonly before: BookedVisit['restorations'][number] | null;
}

export interface BookingValues {
  readonly day: string;
  readonly alike: string;
  readonly chartReference: string;
  readonly dentistId: string;
  readonly locationId: string;
  readonly restorations: readonly RestorationValues[];
}

export function newRestoration(key: string): RestorationValues {
  return { key, templateId: '', tooth: '', surfaces: '', before: null };
}

export function newValues(day: string, key: string): BookingValues {
  const nobody = { chartReference: '', dentistId: '', locationId: '' };
  return { day, alike: '1', ...nobody, restorations: [newRestoration(key)] };
}

export function valuesOf(visit: BookedVisit): BookingValues {
  return {
    day: visit.day,
    alike: String(visit.alike),
    chartReference: visit.chartReference ?? '',
    dentistId: visit.dentist?.id ?? '',
    locationId: visit.location?.id ?? '',
    restorations: visit.restorations.map((before, i) => ({
      key: `before ${i}`,
      templateId: before.template.id,
      tooth: before.tooth ?? '',
      surfaces: before.surfaces ?? '',
      before,
    })),
  };
}

/** What is typed as the service takes it; what was said beside stays as long as the place does. */
export function bodyOf(values: BookingValues): Omit<Shape<'ChangeBookedVisitDto'>, 'version'> {
  const given = (text: string) => (text.trim() === '' ? null : text.trim());
  return {
    day: values.day,
    alike: Number(values.alike),
    chartReference: given(values.chartReference),
    dentistId: given(values.dentistId),
    locationId: given(values.locationId),
    restorations: values.restorations.map(({ templateId, tooth, surfaces, before }) => {
      const place = { tooth: given(tooth), surfaces: given(surfaces) };
      const same = before?.tooth === place.tooth && before.surfaces === place.surfaces;
      return {
        ...{ templateId, ...place },
        cavityClass: same ? before.cavityClass : null,
        size: before?.size ?? null,
        reason: before?.reason ?? null,
        shades: before?.shades.map(({ id }) => id) ?? [],
      };
    }),
  };
}

interface Words {
  readonly required: string;
  readonly past: string;
  readonly count: string;
  readonly oneChart: string;
  readonly needsTooth: string;
}

/** What can be seen to be wrong, by the paths of the service. `first` is the earliest day allowed. */
export function checkBooking(
  values: BookingValues,
  first: string,
  words: Words,
): Record<string, string | undefined> {
  const { day, alike, chartReference, restorations } = values;
  const count = /^\d{1,3}$/.test(alike.trim()) ? Number(alike) : 0;
  const wrong: Record<string, string | undefined> = {};
  if (day === '') wrong.day = words.required;
  else if (day < first) wrong.day = words.past;
  if (count < 1 || count > 200) wrong.alike = words.count;
  else if (count > 1 && chartReference.trim() !== '') wrong.alike = words.oneChart;
  restorations.forEach(({ templateId, tooth, surfaces }, i) => {
    if (templateId === '') wrong[`restorations[${i}].templateId`] = words.required;
    if (surfaces.trim() !== '' && tooth.trim() === '') {
      wrong[`restorations[${i}].tooth`] = words.needsTooth;
    }
  });
  return wrong;
}
