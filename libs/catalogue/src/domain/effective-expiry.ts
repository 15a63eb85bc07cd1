/** A calendar day as YYYY-MM-DD (ISO 8601). */
type IsoDate = string;

export const LIFE_UNITS = ['day', 'month'] as const;
export type LifeUnit = (typeof LIFE_UNITS)[number];

/** How long an opened container may be used. */
export interface LifeAfterOpening {
  readonly value: number;
  readonly unit: LifeUnit;
}

export interface ExpiryFacts {
  readonly labelExpiry: IsoDate | null;
  readonly openedOn: IsoDate | null;
  readonly life: LifeAfterOpening | null;
}

/**
 * The last day on which something may be used: the earlier of the label's expiry and opened-on plus
 * the life after opening. Null when nothing limits it. Common practice for multi-use containers;
 * the maker's own instructions come first.
 */
export function effectiveExpiry({ labelExpiry, openedOn, life }: ExpiryFacts): IsoDate | null {
  const opened = openedOn !== null && life !== null ? endOfLife(openedOn, life) : null;
  if (opened === null) return labelExpiry;
  if (labelExpiry === null) return opened;
  return opened < labelExpiry ? opened : labelExpiry; // ISO days sort as text
}

function endOfLife(openedOn: IsoDate, life: LifeAfterOpening): IsoDate {
  const opened = new Date(`${openedOn}T00:00:00Z`);
  const day = opened.getUTCDate();
  if (life.unit === 'day') {
    opened.setUTCDate(day + life.value);
  } else {
    opened.setUTCDate(1);
    opened.setUTCMonth(opened.getUTCMonth() + life.value + 1, 0); // that month's last day
    opened.setUTCDate(Math.min(day, opened.getUTCDate()));
  }
  return opened.toISOString().slice(0, 10);
}
