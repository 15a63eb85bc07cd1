import type { Text } from '../../../text/text.js';
import type { BookedVisit } from '../api/list-booked-visits.js';

type Restoration = BookedVisit['restorations'][number];

/** '11 MI, Front filling, one side': what is said of it, and nothing else. */
export function restorationWords({ template, tooth, surfaces }: Restoration): string {
  const place = [tooth, surfaces].filter((part) => part !== null).join(' ');
  return place === '' ? template.name : `${place}, ${template.name}`;
}

/** Whose visit it is, or how many there are: 'Chart C-7', '6 visits'. */
export function whoseWords({ chartReference, alike }: BookedVisit, t: Text): string | null {
  if (chartReference !== null) return t.booked.chart(chartReference);
  return alike === 1 ? null : t.booked.alike(alike);
}

/** The booking in one line, for dialogs and notices. */
export function bookingWords(visit: BookedVisit, t: Text): string {
  const what = visit.restorations.map(restorationWords).join('; ');
  const whose = whoseWords(visit, t);
  return whose === null ? what : `${whose}: ${what}`;
}
