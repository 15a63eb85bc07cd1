const HAIR = 1e-9;

/** How far use may have got when new goods expire: values in rising order, with their chances. */
export interface ReachedPlaces {
  readonly values: Float64Array;
  readonly chances: Float64Array;
}

/** What becomes of goods that stand behind the lots which expire no later. In counts. */
export class BehindShelf {
  private constructor(
    /** How far use may have got, the furthest first. */
    private readonly values: Float64Array,
    /** The chance of getting at least that far. */
    private readonly atLeast: Float64Array,
    /** What goes first. */
    private readonly ahead: number,
  ) {}

  static of(reached: ReachedPlaces, ahead: number): BehindShelf {
    const values = reached.values.slice().reverse();
    const atLeast = reached.chances.slice().reverse();
    for (let i = 1; i < atLeast.length; i += 1) {
      atLeast[i] = (atLeast[i] ?? 0) + (atLeast[i - 1] ?? 0);
    }
    return new BehindShelf(values, atLeast, ahead);
  }

  /** The same goods with so many more in front that expire with them. */
  withMoreAhead(quantity: number): BehindShelf {
    return new BehindShelf(this.values, this.atLeast, this.ahead + quantity);
  }

  /** Chance that at least `quantity` of the new goods is used before it expires. */
  usedUp(quantity: number): number {
    if (quantity <= 0) return 1;
    const last = this.firstBelow(quantity) - 1;
    return last < 0 ? 0 : Math.min(this.atLeast[last] ?? 0, 1);
  }

  /** What is expected of `quantity` new goods to expire. */
  expectedLeft(quantity: number): number {
    let left = 0;
    for (let i = this.firstBelow(quantity); i < this.values.length; i += 1) {
      const chance = (this.atLeast[i] ?? 0) - (i === 0 ? 0 : (this.atLeast[i - 1] ?? 0));
      left += chance * (quantity - this.usedAt(i));
    }
    return Math.min(left, quantity);
  }

  /** The most that is used up with at least this chance; not negative. */
  mostUsedUp(chance: number): number {
    let [low, high] = [-1, this.values.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((this.atLeast[middle] ?? 0) >= chance - 1e-12) high = middle;
      else low = middle;
    }
    return high < this.values.length ? this.usedAt(high) : 0;
  }

  private usedAt(i: number): number {
    return Math.max((this.values[i] ?? 0) - this.ahead, 0);
  }

  /** The first place in the list at which fewer than `quantity` new goods were used. */
  private firstBelow(quantity: number): number {
    let [low, high] = [-1, this.values.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.usedAt(middle) < quantity - HAIR) high = middle;
      else low = middle;
    }
    return high;
  }
}
