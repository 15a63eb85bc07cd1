/** Minutes until a message that could not be sent is tried again; after the last one it is given up. */
const RETRY_MINUTES = [1, 5, 30, 120, 720] as const;

/** When to try again after so many failed attempts (1 is the first); undefined: never again. */
export function nextTry(failed: number, now: Date): Date | undefined {
  const minutes = RETRY_MINUTES[failed - 1];
  return minutes === undefined ? undefined : new Date(now.getTime() + minutes * 60_000);
}

interface LocalTime {
  readonly day: string;
  /** 0 to 23. */
  readonly hour: number;
}

/** The day and hour it is in a time zone. */
export function localTime(timeZone: string, now: Date): LocalTime {
  const parts = new Intl.DateTimeFormat('en-CA', {
    ...{ timeZone, year: 'numeric', month: '2-digit', day: '2-digit' },
    ...{ hour: '2-digit', hourCycle: 'h23' },
  }).formatToParts(now);
  const part = (type: string) => parts.find((each) => each.type === type)?.value ?? '';
  return { day: `${part('year')}-${part('month')}-${part('day')}`, hour: Number(part('hour')) };
}

/** Once a day, from the hour on: a service that was off in the morning sends it later that day. */
export function isDigestDue(now: LocalTime, hour: number, lastDigestOn: string | null): boolean {
  return now.hour >= hour && (lastDigestOn === null || lastDigestOn < now.day);
}
