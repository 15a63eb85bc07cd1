interface Tries {
  readonly times: number[];
}

/**
 * Counts failed sign-ins per key (name and address). A try counts as failed from the moment it
 * starts, so that many at once get no more guesses than one after another.
 */
export class SignInThrottle {
  private readonly byKey = new Map<string, Tries>();

  constructor(
    private readonly limit = 10,
    private readonly windowMillis = 15 * 60_000,
    private readonly mostKeys = 10_000,
  ) {}

  /** Seconds to wait before the next try; 0 when this one may go on, and is then counted. */
  begin(key: string, nowMillis: number): number {
    const since = nowMillis - this.windowMillis;
    const times = (this.byKey.get(key)?.times ?? []).filter((time) => time > since);
    const [oldest] = times;
    if (oldest !== undefined && times.length >= this.limit) {
      return Math.max(1, Math.ceil((oldest + this.windowMillis - nowMillis) / 1000));
    }
    this.byKey.delete(key); // so that the map stays in the order of the latest try
    this.byKey.set(key, { times: [...times, nowMillis] });
    this.forgetOldest();
    return 0;
  }

  /** The person proved who they are: what failed before no longer counts. */
  succeeded(key: string): void {
    this.byKey.delete(key);
  }

  private forgetOldest(): void {
    if (this.byKey.size <= this.mostKeys) return;
    const [first] = this.byKey.keys();
    if (first !== undefined) this.byKey.delete(first);
  }
}
