import { Injectable } from '@nestjs/common';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { type Alert, inOrderOfUrgency } from '../domain/alert.js';
import { shelfAlert } from '../domain/stock-alerts.js';
import { reorderAlert, shortfallAlert } from '../domain/supply-alerts.js';
import type { AlertDto, AlertListDto, AlertQueryDto } from '../http/alerts.dto.js';
import { loadShelf, loadShortfalls, loadSupply } from './alert-facts.js';

/** Every reason to act today, the most urgent first, each with the figures behind it. */
@Injectable()
export class ListAlerts {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: AlertQueryDto): Promise<AlertListDto> {
    const { practiceId, currency } = actor;
    const today = this.clock.today(actor.timeZone);
    const withinDays =
      query.withinDays === undefined ? actor.expiryWarningDays : Number(query.withinDays);
    const found = await this.uow.read(practiceId, async (tx) => {
      const shelf = await loadShelf(tx, practiceId, today, withinDays);
      const shortfalls = await loadShortfalls(tx, practiceId);
      const supply = await loadSupply(tx, practiceId, today);
      return [
        ...shelf.map((facts) => shelfAlert(facts, withinDays)),
        ...shortfalls.map((facts) => shortfallAlert(facts, currency)),
        ...supply.map((facts) => reorderAlert(facts, currency)),
      ].filter((alert) => alert !== undefined);
    });
    return { asOf: today, withinDays, alerts: inOrderOfUrgency(found).map(toDto) };
  }
}

function toDto(alert: Alert): AlertDto {
  return {
    id: alert.id,
    kind: alert.kind,
    severity: alert.severity,
    consumable: alert.consumable,
    lot: alert.lot,
    location: alert.location,
    holdingId: alert.holdingId,
    figures: [...alert.figures],
    sentence: alert.sentence,
    action: alert.action,
  };
}
