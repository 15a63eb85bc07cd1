import { Injectable } from '@nestjs/common';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { loadOpenEpisodes } from '../db/alert-episodes.js';
import { loadSnoozes, type SnoozeRow } from '../db/alert-snoozes.js';
import type { Alert } from '../domain/alert.js';
import type { AlertDto, AlertListDto, AlertQueryDto } from '../http/alerts.dto.js';
import { FindAlerts } from './find-alerts.js';

/** Every reason to act today, the most urgent first, each with the figures behind it. */
@Injectable()
export class ListAlerts {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly findAlerts: FindAlerts,
  ) {}

  async run(actor: Actor, query: AlertQueryDto): Promise<AlertListDto> {
    const { practiceId, currency } = actor;
    const today = this.clock.today(actor.timeZone);
    const withinDays =
      query.withinDays === undefined ? actor.expiryWarningDays : Number(query.withinDays);
    return this.uow.read(practiceId, async (tx) => {
      const alerts = await this.findAlerts.run(tx, { practiceId, currency, today, withinDays });
      const snoozes = await loadSnoozes(tx, practiceId, today);
      const episodes = await loadOpenEpisodes(tx);
      const since = new Map(episodes.map((episode) => [episode.alertId, episode.openedAt]));
      const all = alerts.map((a) => toDto(a, since.get(a.id), snoozes.get(a.id)));
      const wanted = query.snoozed === 'true';
      return {
        asOf: today,
        withinDays,
        snoozed: all.filter((alert) => alert.snoozed !== null).length,
        alerts: all.filter((alert) => (alert.snoozed !== null) === wanted),
      };
    });
  }
}

function toDto(alert: Alert, since: Date | undefined, snooze: SnoozeRow | undefined): AlertDto {
  return {
    id: alert.id,
    kind: alert.kind,
    severity: alert.severity,
    consumable: alert.consumable,
    lot: alert.lot,
    location: alert.location,
    holdingId: alert.holdingId,
    order: alert.order ?? null,
    bookedVisits: (alert.bookedVisits ?? []).map((visit) => ({ ...visit })),
    level: alert.level ?? null,
    figures: [...alert.figures],
    sentence: alert.sentence,
    action: alert.action,
    since: since?.toISOString() ?? null,
    snoozed: snooze ? { until: snooze.until, reason: snooze.reason, by: snooze.person } : null,
  };
}
