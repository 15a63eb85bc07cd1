/** What is put off usually comes back after a week, and must after ninety days. */
export const USUAL_DAYS = 7;
export const LONGEST_DAYS = 90;

/** A day so many days after another. */
export function later(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}
