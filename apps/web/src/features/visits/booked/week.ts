const DAY_MS = 86_400_000;

export function daysAfter(iso: string, days: number): string {
  return new Date(Date.parse(`${iso}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

/** The seven days of the week that a day is in, from Monday on (ISO 8601). */
export function weekOf(iso: string): string[] {
  const weekday = (new Date(`${iso}T00:00:00Z`).getUTCDay() + 6) % 7;
  return Array.from({ length: 7 }, (_, i) => daysAfter(iso, i - weekday));
}
