import { Injectable } from '@nestjs/common';
import type { Actor, Tx } from '#lib/platform';

export type ArrivalHandler = (
  tx: Tx,
  actor: Actor,
  consumableIds: readonly string[],
) => Promise<number>;

/**
 * Stock knows nothing of visits, yet usable goods that arrive settle the shortfalls of earlier visits
 * in the same transaction. Whoever keeps shortfalls registers here once, when the service starts.
 */
@Injectable()
export class StockArrivals {
  private readonly handlers: ArrivalHandler[] = [];

  register(handler: ArrivalHandler): void {
    this.handlers.push(handler);
  }

  /** Tells that usable stock of these consumables arrived; answers how many shortfalls it settled. */
  async announce(tx: Tx, actor: Actor, consumableIds: readonly string[]): Promise<number> {
    let settled = 0;
    for (const handler of this.handlers) settled += await handler(tx, actor, consumableIds);
    return settled;
  }
}
