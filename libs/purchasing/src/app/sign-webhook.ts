import { createHmac } from 'node:crypto';

export interface Signed {
  readonly id: string;
  readonly secondsSince1970: number;
  readonly body: string;
}

/**
 * The headers by which a receiver can tell that a message comes from here and is not an old one sent
 * again: HMAC-SHA256 over id, time and body, as the Standard Webhooks specification 1.0 describes it.
 */
export function webhookHeaders(secret: string, signed: Signed): Record<string, string> {
  const key = Buffer.from(secret.replace(/^whsec_/, ''), 'base64');
  const { id, secondsSince1970, body } = signed;
  const code = createHmac('sha256', key).update(`${id}.${secondsSince1970}.${body}`);
  return {
    'content-type': 'application/json',
    'webhook-id': id,
    'webhook-timestamp': String(secondsSince1970),
    'webhook-signature': `v1,${code.digest('base64')}`,
  };
}
