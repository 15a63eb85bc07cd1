/** Days from one day to another; less than 0 when the other is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}

export type Nearness = 'over' | 'soon' | 'later';

/** How near a last day of use is: over, within the days of warning, or later. */
export function nearnessOf(expiry: string, today: string, warningDays: number): Nearness {
  const left = daysBetween(today, expiry);
  if (left < 0) return 'over';
  return left <= warningDays ? 'soon' : 'later';
}
