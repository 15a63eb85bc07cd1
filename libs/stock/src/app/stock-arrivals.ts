import { Injectable } from '@nestjs/common';
import { type Actor, Clock, type IsoDate, type Tx } from '#lib/platform';
import { carryOverWhatCameBack } from './carry-over.js';

export type ArrivalHandler = (
  tx: Tx,
  actor: Actor,
  consumableIds: readonly string[],
) => Promise<number>;

export interface Withdrawal {
  readonly deliveryId: string;
  /** Only what this line of it settled. */
  readonly layerId?: string;
  readonly day: IsoDate;
  readonly note: string;
}

export type WithdrawalHandler = (tx: Tx, actor: Actor, what: Withdrawal) => Promise<void>;

/**
 * Stock knows nothing of visits, yet usable goods that arrive settle the shortfalls of earlier visits
 * in the same transaction. Whoever keeps shortfalls registers here once, when the service starts.
 */
@Injectable()
export class StockArrivals {
  private readonly handlers: ArrivalHandler[] = [];
  private readonly withdrawals: WithdrawalHandler[] = [];

  constructor(private readonly clock: Clock) {}

  register(handler: ArrivalHandler): void {
    this.handlers.push(handler);
  }

  registerWithdrawal(handler: WithdrawalHandler): void {
    this.withdrawals.push(handler);
  }

  /** Tells that a delivery is about to be undone: what it settled is open again. */
  async withdraw(tx: Tx, actor: Actor, what: Withdrawal): Promise<void> {
    for (const handler of this.withdrawals) await handler(tx, actor, what);
  }

  /**
   * Tells that usable stock of these consumables, which are locked, arrived or came back; answers how
   * many shortfalls it settled.
   */
  async announce(tx: Tx, actor: Actor, consumableIds: readonly string[]): Promise<number> {
    const day = this.clock.today(actor.timeZone);
    await carryOverWhatCameBack(tx, actor, { consumableIds, day });
    let settled = 0;
    for (const handler of this.handlers) settled += await handler(tx, actor, consumableIds);
    return settled;
  }
}
