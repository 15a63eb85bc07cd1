import { parseSurfaces, parseTooth, type ToothNotation } from '#lib/dentition';
import type { BookedVisit } from '../api/get-booked-visit.js';
import { newRestoration, type RestorationDraft, type VisitDraft } from './draft.js';
import { withFittingClass } from './fitting-class.js';

type Booked = BookedVisit['restorations'][number];

/**
 * The visit that keeps a booking, as far as that says: whose, by whom, where, and the restorations
 * whose tooth is known. The template of the others is offered for the teeth that are chosen.
 */
export function fromBooking(
  fresh: VisitDraft,
  booking: BookedVisit,
  about: { readonly notation: ToothNotation; readonly newKey: () => string },
): VisitDraft {
  const { id, day, restorations, chartReference, dentist, location } = booking;
  const placed = restorations.flatMap((each) => {
    const drafted = draftOf(each, about.notation, about.newKey());
    return drafted ? [drafted] : [];
  });
  const open = restorations.find((each) => each.tooth === null);
  return {
    ...fresh,
    chartReference: chartReference ?? '',
    dentistId: dentist?.id ?? fresh.dentistId,
    locationId: location?.id ?? fresh.locationId,
    restorations: placed,
    bookedVisit: { id, day, templateId: open?.template.id ?? '' },
  };
}

function draftOf(of: Booked, notation: ToothNotation, key: string): RestorationDraft | undefined {
  const tooth = of.tooth === null ? undefined : parseTooth(of.tooth, notation);
  if (tooth === undefined) return undefined;
  const read = of.surfaces === null ? undefined : parseSurfaces(tooth, of.surfaces);
  const drafted: RestorationDraft = {
    ...newRestoration(key, tooth),
    surfaces: read?.ok ? read.surfaces : [],
    cavityClass: of.cavityClass,
    classChosen: of.cavityClass !== null,
    size: of.size ?? 'medium',
    reason: of.reason,
    templateId: of.template.id,
    shades: of.shades.map(({ id }) => id),
  };
  return withFittingClass(drafted);
}
