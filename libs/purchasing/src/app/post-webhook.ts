import type { WaitingNotice } from '../db/notices.js';
import { webhookHeaders } from './sign-webhook.js';

const TIMEOUT_MS = 10_000;

/** Sends a message to its address; anything but a 2xx answer within ten seconds is a failure. */
export async function postWebhook(
  notice: Pick<WaitingNotice, 'id' | 'recipients' | 'content'>,
  secret: string,
  now: Date,
): Promise<void> {
  const [url = ''] = notice.recipients;
  const body = JSON.stringify(notice.content);
  const secondsSince1970 = Math.floor(now.getTime() / 1000);
  const response = await fetch(url, {
    method: 'POST',
    headers: webhookHeaders(secret, { id: notice.id, secondsSince1970, body }),
    body,
    // Where the owner said, and nowhere else: an answer that leads on is no 2xx.
    redirect: 'manual',
    signal: AbortSignal.timeout(TIMEOUT_MS),
  });
  await response.body?.cancel();
  if (!response.ok) throw new Error(`The address answered ${response.status}.`);
}

const LOOPBACK = /^(localhost|127(\.\d+){3}|\[::1\])$/;

/** Why messages may not go to an address; undefined when they may. */
export function webhookProblem(address: string): string | undefined {
  if (!URL.canParse(address)) return 'must be an address that begins with https://';
  const { protocol, hostname, username, password } = new URL(address);
  if (username !== '' || password !== '') return 'must not hold a name or password';
  if (protocol === 'https:' || (protocol === 'http:' && LOOPBACK.test(hostname))) return undefined;
  return 'must begin with https:// (http:// only on this machine)';
}
