import { randomBytes } from 'node:crypto';
import type { IsoDate, Tx } from '#lib/platform';
import type { DigestLanguage } from '../domain/digest-words.js';

export interface NoticeSettings {
  readonly digestOn: boolean;
  readonly digestTo: readonly string[];
  readonly digestHour: number;
  readonly digestLanguage: DigestLanguage;
  readonly webhookOn: boolean;
  readonly webhookUrl: string | null;
  /** whsec_ and 32 bytes in base64, as the Standard Webhooks specification writes a secret. */
  readonly webhookSecret: string;
  readonly lastDigestOn: IsoDate | null;
}

const COLUMNS = `digest_on AS "digestOn", digest_to AS "digestTo", digest_hour AS "digestHour",
  digest_language AS "digestLanguage", webhook_on AS "webhookOn", webhook_url AS "webhookUrl",
  webhook_secret AS "webhookSecret", last_digest_on::text AS "lastDigestOn"`;

/** The settings, with everything off where nothing was ever set. */
export async function loadNoticeSettings(tx: Tx): Promise<NoticeSettings | undefined> {
  const [row] = await tx.query<NoticeSettings>(
    `SELECT ${COLUMNS} FROM notice_settings WHERE practice_id = $1`,
    [tx.practiceId],
  );
  return row;
}

export function newWebhookSecret(): string {
  return `whsec_${randomBytes(32).toString('base64')}`;
}

export const NOTHING_SET: Omit<NoticeSettings, 'webhookSecret'> = {
  digestOn: false,
  digestTo: [],
  digestHour: 7,
  digestLanguage: 'en',
  webhookOn: false,
  webhookUrl: null,
  lastDigestOn: null,
};

export async function saveNoticeSettings(tx: Tx, settings: NoticeSettings): Promise<void> {
  await tx.query(
    `INSERT INTO notice_settings (practice_id, digest_on, digest_to, digest_hour, digest_language,
       webhook_on, webhook_url, webhook_secret)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8)
     ON CONFLICT (practice_id) DO UPDATE SET digest_on = $2, digest_to = $3, digest_hour = $4,
       digest_language = $5, webhook_on = $6, webhook_url = $7, webhook_secret = $8`,
    [
      ...[tx.practiceId, settings.digestOn, [...settings.digestTo], settings.digestHour],
      ...[settings.digestLanguage, settings.webhookOn, settings.webhookUrl, settings.webhookSecret],
    ],
  );
}

export async function noteDigest(tx: Tx, day: IsoDate): Promise<void> {
  await tx.query('UPDATE notice_settings SET last_digest_on = $2 WHERE practice_id = $1', [
    tx.practiceId,
    day,
  ]);
}
