import { Injectable } from '@nestjs/common';
import { Clock, Mailer, UnitOfWork } from '#lib/platform';
import { loadNoticeSettings } from '../db/notice-settings.js';
import { claimNotices, noteFailed, noteSent, type WaitingNotice } from '../db/notices.js';
import { nextTry } from '../domain/notice-times.js';
import { postWebhook } from './post-webhook.js';
import { wentWrong } from './went-wrong.js';

/** Longer than any attempt takes: then the message is due again. */
const CLAIM_MS = 5 * 60_000;

/** Sends what waits to be sent, and writes down how it went. */
@Injectable()
export class SendNotices {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly mailer: Mailer,
  ) {}

  async run(practiceId: string): Promise<void> {
    const now = this.clock.now();
    const { notices, secret } = await this.uow.run(practiceId, async (tx) => ({
      notices: await claimNotices(tx, now, new Date(now.getTime() + CLAIM_MS)),
      secret: (await loadNoticeSettings(tx))?.webhookSecret ?? '',
    }));
    for (const notice of notices) await this.send(practiceId, notice, secret);
  }

  private async send(practiceId: string, notice: WaitingNotice, secret: string): Promise<void> {
    const error = await this.attempt(notice, secret);
    const now = this.clock.now();
    await this.uow.run(practiceId, async (tx) => {
      if (error === undefined) return noteSent(tx, notice.id, now);
      return noteFailed(tx, notice.id, { error, next: nextTry(notice.attempts, now) });
    });
  }

  /** What went wrong, in words; undefined when it arrived. */
  private async attempt(notice: WaitingNotice, secret: string): Promise<string | undefined> {
    try {
      if (notice.channel === 'digest') await this.mail(notice);
      else await postWebhook(notice, secret, this.clock.now());
      return undefined;
    } catch (error) {
      return wentWrong(error);
    }
  }

  private async mail(notice: WaitingNotice): Promise<void> {
    const { subject, text } = notice.content as { subject: string; text: string };
    const messageId = `<${notice.id}@traybook>`;
    await this.mailer.send({ messageId, to: notice.recipients, subject, text });
  }
}
