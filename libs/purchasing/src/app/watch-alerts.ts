import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { Clock, type Tx, UnitOfWork } from '#lib/platform';
import { closeEpisodes, loadOpenEpisodes, openEpisodes } from '../db/alert-episodes.js';
import { loadSnoozes } from '../db/alert-snoozes.js';
import { loadNoticeSettings, type NoticeSettings, noteDigest } from '../db/notice-settings.js';
import { notToldYet, writeNotice } from '../db/notices.js';
import { type Alert, nameOf } from '../domain/alert.js';
import { alertChanges, type OpenEpisode } from '../domain/alert-changes.js';
import { type DigestAlert, digestMail } from '../domain/digest-words.js';
import { isDigestDue, localTime } from '../domain/notice-times.js';
import { FindAlerts } from '../queries/find-alerts.js';

interface Watched {
  readonly practice_id: string;
  readonly practice_name: string;
  readonly time_zone: string;
  readonly currency: string;
  readonly expiry_warning_days: number;
}

/** An alert that is open and that nobody put off, with the opening it belongs to. */
interface Standing {
  readonly alert: Alert;
  readonly episode: OpenEpisode;
}

/**
 * Looks at every practice: writes down which alerts the data opened and closed, and what is to be told
 * of it. Each opening is told once on each way; one that was put off is told when it is due again.
 */
@Injectable()
export class WatchAlerts {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly dataSource: DataSource,
    private readonly findAlerts: FindAlerts,
  ) {}

  /** Answers with the practices it looked at. */
  async run(): Promise<string[]> {
    const practices: Watched[] = await this.dataSource.query('SELECT * FROM practices_to_watch()');
    for (const practice of practices) {
      await this.uow.run(practice.practice_id, (tx) => this.look(tx, practice));
    }
    return practices.map((practice) => practice.practice_id);
  }

  private async look(tx: Tx, practice: Watched): Promise<void> {
    // Of several processes on one database only one looks; the others have nothing to add.
    const [turn] = await tx.query<{ mine: boolean }>(
      `SELECT pg_try_advisory_xact_lock(hashtextextended('watch ' || $1, 0)) AS mine`,
      [practice.practice_id],
    );
    if (turn?.mine !== true) return;
    const now = this.clock.now();
    const today = this.clock.today(practice.time_zone);
    const alerts = await this.findAlerts.run(tx, {
      ...{ practiceId: practice.practice_id, currency: practice.currency, today },
      withinDays: practice.expiry_warning_days,
    });
    const before = await loadOpenEpisodes(tx);
    const { opened, closed } = alertChanges(alerts, before);
    await closeEpisodes(tx, closed, now);
    const episodes = [...before, ...(await openEpisodes(tx, opened, now))];
    const byAlert = new Map(episodes.map((episode) => [episode.alertId, episode]));
    const snoozes = await loadSnoozes(tx, practice.practice_id, today);
    const standing = alerts.flatMap((alert) => {
      const episode = byAlert.get(alert.id);
      return episode && !snoozes.has(alert.id) ? [{ alert, episode }] : [];
    });
    const settings = await loadNoticeSettings(tx);
    if (settings?.webhookOn) await this.tellWebhook(tx, settings, standing);
    if (settings?.digestOn) await this.tellDigest(tx, { settings, practice, standing });
  }

  private async tellWebhook(tx: Tx, settings: NoticeSettings, standing: readonly Standing[]) {
    const fresh = await freshOf(tx, 'webhook', standing);
    if (fresh.length === 0 || settings.webhookUrl === null) return;
    const now = this.clock.now();
    const content = {
      type: 'alerts.opened',
      timestamp: now.toISOString(),
      data: { alerts: fresh.map(({ alert }) => published(alert)) },
    };
    const recipients = [settings.webhookUrl];
    const episodes = fresh.map(({ episode }) => episode);
    await writeNotice(tx, { channel: 'webhook', recipients, content, episodes }, now);
  }

  private async tellDigest(tx: Tx, about: DigestFacts): Promise<void> {
    const { settings, practice, standing } = about;
    const now = this.clock.now();
    const local = localTime(practice.time_zone, now);
    if (!isDigestDue(local, settings.digestHour, settings.lastDigestOn)) return;
    const fresh = await freshOf(tx, 'digest', standing);
    await noteDigest(tx, local.day);
    // A day on which nothing is new has no mail.
    if (fresh.length === 0) return;
    const content = digestMail({
      ...{ practice: practice.practice_name, day: local.day, language: settings.digestLanguage },
      fresh: fresh.map(({ alert }) => digestAlert(alert)),
      still: standing.length - fresh.length,
    });
    const episodes = fresh.map(({ episode }) => episode);
    const recipients = settings.digestTo;
    await writeNotice(tx, { channel: 'digest', recipients, content, episodes }, now);
  }
}

interface DigestFacts {
  readonly settings: NoticeSettings;
  readonly practice: Watched;
  readonly standing: readonly Standing[];
}

async function freshOf(tx: Tx, channel: 'digest' | 'webhook', standing: readonly Standing[]) {
  const open = standing.map(({ episode }) => episode);
  const fresh = new Set((await notToldYet(tx, channel, open)).map(({ id }) => id));
  return standing.filter(({ episode }) => fresh.has(episode.id));
}

/** What leaves the house: never more than the screen Today shows, and no chart of a patient. */
function published({ urgency: _, bookedVisits: __, ...alert }: Alert): object {
  return alert;
}

function digestAlert(alert: Alert): DigestAlert {
  const { lot, location, order, level } = alert;
  const number = lot === null ? '' : ` (${lot.lotNumber ?? '–'})`;
  return {
    ...{ id: alert.id, kind: alert.kind, figures: alert.figures },
    subject: order ? `${order.number}, ${order.supplier}` : `${nameOf(alert.consumable)}${number}`,
    place: location?.name ?? null,
    ...(level ? { level: level.kind } : {}),
  };
}
