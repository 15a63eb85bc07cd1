import type { Driver } from './api/get-template.js';

/** In the order in which the editor shows them: from the whole visit to the smallest part. */
export const DRIVERS = [
  'visit',
  'staff member',
  'front segment or quadrant',
  'tooth',
  'restoration',
  'surface',
  'proximal surface',
  'layer',
  'mm3',
  'shade',
  'attempt',
  'cycle',
] as const satisfies readonly Driver[];

/** What the visit shares cannot be the shades, which are chosen for one restoration. */
export function isSharedByVisit(driver: Driver): boolean {
  return driver === 'visit' || driver === 'staff member' || driver === 'front segment or quadrant';
}
