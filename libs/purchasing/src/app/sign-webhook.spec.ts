import { randomBytes } from 'node:crypto';
import { describe, expect, it } from '@jest/globals';
import { Webhook } from 'standardwebhooks';
import { webhookHeaders } from './sign-webhook.js';

describe('a signed message', () => {
  // Secret, id, time, body and signature as the libraries of the Standard Webhooks specification test
  // them (from memory); the registry's library writes the same.
  it('has the signature that the reference library writes', () => {
    const secret = 'whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw';
    const [id, seconds] = ['msg_p5jXN8AQM9LWM0D4loKWxJek', 1_614_265_330];
    const body = '{"test": 2432232314}';
    const theirs = new Webhook(secret).sign(id, new Date(seconds * 1000), body);
    const headers = webhookHeaders(secret, { id, secondsSince1970: seconds, body });
    expect(headers['webhook-signature']).toBe(theirs);
    expect(theirs).toBe('v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=');
  });

  it('is believed by the reference library, and not when a letter of it is another', () => {
    const secret = `whsec_${randomBytes(32).toString('base64')}`;
    const receiver = new Webhook(secret);
    const body = JSON.stringify({ type: 'alerts.opened', alerts: ['ä'] });
    const secondsSince1970 = Math.floor(Date.now() / 1000);
    const headers = webhookHeaders(secret, { id: 'one', secondsSince1970, body });
    expect(receiver.verify(body, headers)).toEqual(JSON.parse(body));
    expect(() => receiver.verify(body.replace('opened', 'closed'), headers)).toThrow();
    expect(() => receiver.verify(body, { ...headers, 'webhook-id': 'two' })).toThrow();
  });
});
