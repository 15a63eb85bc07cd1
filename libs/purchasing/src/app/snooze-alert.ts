import { Injectable } from '@nestjs/common';
import {
  type Actor,
  addDays,
  type Claimed,
  Clock,
  type IsoDate,
  newId,
  UnitOfWork,
} from '#lib/platform';
import { insertSnooze, loadSnoozes } from '../db/alert-snoozes.js';
import type { NewSnoozeDto, SnoozeDto } from '../http/snooze.dto.js';
import { refusePurchasing } from '../purchasing.refusals.js';
import { FindAlerts } from '../queries/find-alerts.js';

/** So many days something may be put off at once. */
const LONGEST_SNOOZE_DAYS = 90;

/** Puts an alert off until a day, with a reason. What is recalled cannot wait. */
@Injectable()
export class SnoozeAlert {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly findAlerts: FindAlerts,
  ) {}

  async run(actor: Actor, key: string, command: NewSnoozeDto): Promise<Claimed<SnoozeDto>> {
    const today = this.clock.today(actor.timeZone);
    checkDay(command.until, today);
    const operation = 'POST /api/reorder/snoozes';
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      const { practiceId, currency, expiryWarningDays } = actor;
      const question = { practiceId, currency, today, withinDays: expiryWarningDays };
      const alerts = await this.findAlerts.run(tx, question);
      const alert = alerts.find(({ id }) => id === command.alertId);
      if (!alert) {
        throw refusePurchasing('alert_not_open', 'There is no open alert with this id.', [
          { field: 'alertId', message: 'names no open alert' },
        ]);
      }
      if (alert.kind === 'recalled lot on hand') {
        throw refusePurchasing('cannot_wait', 'A held or recalled lot cannot be put off.', [
          { field: 'alertId', message: 'is about a held or recalled lot' },
        ]);
      }
      await insertSnooze(tx, {
        ...{ id: newId(), alertId: alert.id, until: command.until },
        ...{ reason: command.reason.trim(), personId: actor.personId, madeAt: this.clock.now() },
      });
      const snooze = (await loadSnoozes(tx, practiceId, addDays(today, -1))).get(alert.id);
      if (!snooze) throw new Error('A snooze that was written cannot be read');
      return { alertId: alert.id, until: snooze.until, reason: snooze.reason, by: snooze.person };
    });
  }
}

/** Until today wakes it at once. */
function checkDay(until: IsoDate, today: IsoDate): void {
  const last = addDays(today, LONGEST_SNOOZE_DAYS);
  if (until >= today && until <= last) return;
  throw refusePurchasing('day_does_not_fit', 'It can be put off from today for 90 days at most.', [
    { field: 'until', message: `must be from ${today} to ${last}` },
  ]);
}
