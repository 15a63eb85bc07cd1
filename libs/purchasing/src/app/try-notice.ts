import { Injectable } from '@nestjs/common';
import { type Actor, Clock, invalidFields, Mailer, newId, UnitOfWork } from '#lib/platform';
import { loadNoticeSettings, type NoticeSettings } from '../db/notice-settings.js';
import type { Channel } from '../db/notices.js';
import type { TrialResultDto } from '../http/notices.dto.js';
import { postWebhook } from './post-webhook.js';
import { wentWrong } from './went-wrong.js';

const SUBJECT = { en: 'Traybook: a trial message', de: 'Traybook: eine Probenachricht' };
const TEXT = {
  en: 'Messages about what needs somebody will arrive here.\n',
  de: 'Hier kommen Nachrichten über das an, was zu tun ist.\n',
};

/** Sends a trial message on one of the two ways and says how it went. */
@Injectable()
export class TryNotice {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly mailer: Mailer,
  ) {}

  async run(actor: Actor, channel: Channel): Promise<TrialResultDto> {
    const settings = await this.uow.read(actor.practiceId, loadNoticeSettings);
    const isSet = channel === 'digest' ? settings?.digestTo.length : settings?.webhookUrl;
    if (!settings || !isSet) {
      const message = 'has no address yet: save one first';
      throw invalidFields([{ field: 'channel', message }]);
    }
    try {
      await this.send(settings, channel);
      return { arrived: true, problem: null };
    } catch (error) {
      return { arrived: false, problem: wentWrong(error) };
    }
  }

  private async send(settings: NoticeSettings, channel: Channel): Promise<void> {
    const id = newId();
    if (channel === 'digest') {
      const { digestTo: to, digestLanguage: language } = settings;
      const [subject, text] = [SUBJECT[language], TEXT[language]];
      return this.mailer.send({ messageId: `<${id}@traybook>`, to, subject, text });
    }
    const now = this.clock.now();
    const content = { type: 'trial', timestamp: now.toISOString(), data: {} };
    const recipients = [settings.webhookUrl ?? ''];
    return postWebhook({ id, recipients, content }, settings.webhookSecret, now);
  }
}
