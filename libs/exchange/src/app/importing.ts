import type { Actor, Tx } from '#lib/platform';

/** An import under way: in whose transaction, for whom, on which day. */
export interface Importing {
  readonly tx: Tx;
  readonly actor: Actor;
  readonly today: string;
  /** Told how many rows of the list are done. */
  readonly onProgress: (rows: number) => Promise<void>;
}
