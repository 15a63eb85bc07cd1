import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { type Actor, invalidFields, Mailer, type Tx, UnitOfWork } from '#lib/platform';
import {
  loadNoticeSettings,
  NOTHING_SET,
  type NoticeSettings,
  newWebhookSecret,
  saveNoticeSettings,
} from '../db/notice-settings.js';
import type { NoticeSettingsChangesDto, NoticeSettingsDto } from '../http/notices.dto.js';
import { refusePurchasing } from '../purchasing.refusals.js';
import { webhookProblem } from './post-webhook.js';

/** Where messages about alerts go. Both ways are off until somebody turns them on. */
@Injectable()
export class NoticeSettingsDesk {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly mailer: Mailer,
  ) {}

  async get(actor: Actor): Promise<NoticeSettingsDto> {
    const settings = await this.uow.read(actor.practiceId, loadNoticeSettings);
    return this.view(settings ?? { ...NOTHING_SET, webhookSecret: '' });
  }

  async change(actor: Actor, command: NoticeSettingsChangesDto): Promise<NoticeSettingsDto> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = (await loadNoticeSettings(tx)) ?? {
        ...{ ...NOTHING_SET, webhookSecret: newWebhookSecret() },
      };
      const after = merged(before, command);
      this.check(after);
      await saveNoticeSettings(tx, after);
      await this.audit(tx, actor, before, after);
      return this.view(after);
    });
  }

  private check(settings: NoticeSettings): void {
    const { digestOn, digestTo, webhookOn, webhookUrl } = settings;
    if (digestOn && digestTo.length === 0) {
      throw invalidFields([{ field: 'digestTo', message: 'must name somebody' }]);
    }
    if (digestOn && !this.mailer.isSet) {
      throw refusePurchasing(
        'no_mail_server',
        'The service was started without a mail server: set SMTP_URL and start it again.',
        [{ field: 'digestOn', message: 'needs a mail server (SMTP_URL)' }],
      );
    }
    if (webhookOn && webhookUrl === null) {
      throw invalidFields([{ field: 'webhookUrl', message: 'is needed to send messages' }]);
    }
    const problem = webhookUrl === null ? undefined : webhookProblem(webhookUrl);
    if (problem !== undefined) {
      throw refusePurchasing('address_not_allowed', `The address ${problem}.`, [
        { field: 'webhookUrl', message: problem },
      ]);
    }
  }

  /** The secret itself is in nobody's audit trail, only that it was changed. */
  private audit(tx: Tx, actor: Actor, before: NoticeSettings, after: NoticeSettings) {
    const shown = ({ webhookSecret: _, lastDigestOn: __, ...rest }: NoticeSettings) => rest;
    return recordAudit(tx, actor, {
      action: 'notice-settings.changed',
      subjectKind: 'practice',
      subjectId: actor.practiceId,
      details: {
        ...{ before: shown(before), after: shown(after) },
        newSecret: before.webhookSecret !== after.webhookSecret,
      },
    });
  }

  private view({ lastDigestOn: _, digestTo, ...rest }: NoticeSettings): NoticeSettingsDto {
    const webhookSecret = rest.webhookSecret === '' ? null : rest.webhookSecret;
    return { ...rest, webhookSecret, digestTo: [...digestTo], mailServer: this.mailer.isSet };
  }
}

function merged(before: NoticeSettings, command: NoticeSettingsChangesDto): NoticeSettings {
  return {
    ...before,
    digestOn: command.digestOn ?? before.digestOn,
    digestTo: command.digestTo?.map((one) => one.address.trim()) ?? before.digestTo,
    digestHour: command.digestHour ?? before.digestHour,
    digestLanguage: command.digestLanguage ?? before.digestLanguage,
    webhookOn: command.webhookOn ?? before.webhookOn,
    webhookUrl: command.webhookUrl === undefined ? before.webhookUrl : command.webhookUrl,
    webhookSecret: command.newWebhookSecret ? newWebhookSecret() : before.webhookSecret,
  };
}
