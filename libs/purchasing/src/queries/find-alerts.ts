import { Injectable } from '@nestjs/common';
import type { IsoDate, Tx } from '#lib/platform';
import { type Alert, inOrderOfUrgency } from '../domain/alert.js';
import { overdueAlert } from '../domain/orders/overdue-alert.js';
import { reorderAlert } from '../domain/reorder-alert.js';
import { runOutAlert } from '../domain/run-out-alert.js';
import { shortfallAlert } from '../domain/shortfall-alert.js';
import { shelfAlert } from '../domain/stock-alerts.js';
import { loadShelf, loadShortfalls, loadSupply } from './alert-facts.js';
import { loadOverdue } from './orders/overdue-facts.js';
import { loadRunOuts } from './run-out-facts.js';

export interface AlertQuestion {
  readonly practiceId: string;
  readonly currency: string;
  readonly today: IsoDate;
  readonly withinDays: number;
}

/** Every reason to act on a day, the most urgent first, each with the figures behind it. */
@Injectable()
export class FindAlerts {
  async run(tx: Tx, question: AlertQuestion): Promise<Alert[]> {
    const { practiceId, currency, today, withinDays } = question;
    const shelf = await loadShelf(tx, practiceId, today, withinDays);
    const shortfalls = await loadShortfalls(tx, practiceId);
    const supply = await loadSupply(tx, practiceId, today);
    const overdue = await loadOverdue(tx, today);
    const runOuts = await loadRunOuts(tx, today);
    const found = [
      ...shelf.map((facts) => shelfAlert(facts, withinDays)),
      ...shortfalls.map((facts) => shortfallAlert(facts, currency)),
      ...runOuts.map(runOutAlert),
      ...overdue.map(overdueAlert),
      ...supply.map((facts) => reorderAlert(facts, currency)),
    ].filter((alert) => alert !== undefined);
    return inOrderOfUrgency(found);
  }
}
