/** What is known of the days to come; one entry per day, all in the same unit. */
export interface BookedDays {
  /** Expected use by the visits booked, expanded through their templates. */
  readonly booked: ArrayLike<number>;
  /** How far that varies by day, squared; as pure chance would (as much as is booked) when left out. */
  readonly variance?: ArrayLike<number>;
  /**
   * The share of a usual day's work that is booked already, 0 to 1, of visits of every kind. Null
   * when the practice does not book its whole day here.
   */
  readonly coverage: ArrayLike<number> | null;
}

export interface CombinedDays {
  /** The share of the statistical forecast that stays, 0 to 1, by day. */
  readonly restShare: Float64Array;
  /** Booked plus what stays, by day. */
  readonly expected: Float64Array;
}

/**
 * Booked visits replace the statistical part they cover. With a known coverage c the rest is
 * (1 - c) x the statistical use: on a day booked out only the booked visits use anything, also when
 * they use less than usual. Without it the booked use itself shows what is covered: the rest is
 * max(0, statistical - booked), so a booking changes the total only once it exceeds the usual.
 * Either way total = booked + rest, nothing is counted twice, and no booking means the statistical
 * forecast. Throws RangeError naming the field and the day.
 */
export function combineBooked(statistical: ArrayLike<number>, days: BookedDays): CombinedDays {
  const { booked, coverage } = days;
  const n = statistical.length;
  if (booked.length !== n) throw new RangeError('booked must have one entry per day');
  if (coverage !== null && coverage.length !== n) {
    throw new RangeError('coverage must have one entry per day');
  }
  const restShare = new Float64Array(n);
  const expected = new Float64Array(n);
  for (let t = 0; t < n; t += 1) {
    const usual = statistical[t] ?? 0;
    const known = booked[t] ?? Number.NaN;
    if (!(known >= 0 && Number.isFinite(known))) {
      throw new RangeError(`booked of day ${t + 1} must be a number of at least 0, not ${known}`);
    }
    const share = coverage === null ? uncovered(usual, known) : 1 - covered(coverage[t], t);
    restShare[t] = share;
    expected[t] = known + share * usual;
  }
  return { restShare, expected };
}

function uncovered(usual: number, booked: number): number {
  return usual <= 0 ? 1 : Math.max(0, 1 - booked / usual);
}

function covered(share: number | undefined, t: number): number {
  if (!(share !== undefined && share >= 0 && share <= 1)) {
    throw new RangeError(`coverage of day ${t + 1} must be between 0 and 1, not ${share}`);
  }
  return share;
}
