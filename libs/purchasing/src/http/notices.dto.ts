import { IsEmail } from 'class-validator';
import {
  ChoiceField,
  FlagField,
  ListField,
  OutChoice,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutText,
  OutTexts,
  OutWhole,
  PageQuery,
  TextField,
  WholeField,
} from '#lib/platform';
import { CHANNELS, NOTICE_STATES } from '../db/notices.js';
import { DIGEST_LANGUAGES, type DigestLanguage } from '../domain/digest-words.js';

export class DigestRecipientDto {
  @TextField(254, { example: 'office@mill.example' })
  @IsEmail({}, { message: 'must be an e-mail address' })
  address: string;
}

export class NoticeSettingsChangesDto {
  @FlagField({ optional: true })
  digestOn?: boolean;

  @ListField(() => DigestRecipientDto, { optional: true, max: 20 })
  digestTo?: DigestRecipientDto[];

  @WholeField(0, 23, {
    optional: true,
    description: 'From this hour on, the time of the practice.',
  })
  digestHour?: number;

  @ChoiceField(DIGEST_LANGUAGES, { optional: true })
  digestLanguage?: DigestLanguage;

  @FlagField({ optional: true })
  webhookOn?: boolean;

  @TextField(2000, { optional: true, example: 'https://office.example/hooks/alerts' })
  webhookUrl?: string | null;

  @FlagField({ optional: true, description: 'True: a new secret; the old one counts no longer.' })
  newWebhookSecret?: boolean;
}

export class NoticeSettingsDto {
  @OutFlag({ description: 'Whether the service was started with a mail server (SMTP_URL).' })
  mailServer: boolean;

  @OutFlag()
  digestOn: boolean;

  @OutTexts()
  digestTo: string[];

  @OutWhole()
  digestHour: number;

  @OutChoice(DIGEST_LANGUAGES)
  digestLanguage: string;

  @OutFlag()
  webhookOn: boolean;

  @OutText({ nullable: true })
  webhookUrl: string | null;

  @OutText({
    nullable: true,
    description: 'Key of the signatures (Standard Webhooks); null until settings are first saved.',
  })
  webhookSecret: string | null;
}

export class TrialDto {
  @ChoiceField(CHANNELS)
  channel: 'digest' | 'webhook';
}

export class TrialResultDto {
  @OutFlag()
  arrived: boolean;

  @OutText({ nullable: true, description: 'What went wrong, in the words of the other side.' })
  problem: string | null;
}

export class NoticeQueryDto extends PageQuery {}

export class NoticeDto {
  @OutId()
  id: string;

  @OutChoice(CHANNELS)
  channel: string;

  @OutInstant()
  madeAt: string;

  @OutTexts()
  recipients: string[];

  @OutWhole({ description: 'Alerts it tells of.' })
  alerts: number;

  @OutChoice(NOTICE_STATES)
  state: string;

  @OutWhole()
  attempts: number;

  @OutInstant({ nullable: true })
  sentAt: string | null;

  @OutText({ nullable: true })
  lastError: string | null;
}

export class NoticePageDto {
  @OutList(() => NoticeDto)
  items: NoticeDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}
