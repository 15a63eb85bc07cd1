import { answerOf, api } from '../../../api/client.js';
import { ProblemError, Unreachable } from '../../../api/problem.js';
import { signedInHint } from '../../../app/session.js';
import { readOutbox } from './outbox.js';
import { sendFromOutbox } from './send.js';

const PAUSE = 6_000;

let started = false;
let running = false;
/** Called after each visit that was booked or refused without anybody waiting for it. */
const listeners = new Set<() => void>();

export function onSettled(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Sends what waits, in its order, as long as whoever entered it is the one who is signed in. */
async function sendWaiting(): Promise<void> {
  if (!readOutbox().some(({ state }) => state === 'waiting')) return;
  if (!navigator.onLine || !signedInHint.isSet()) return;
  const { person, practice } = await answerOf(api.GET('/api/session'));
  const own = readOutbox().filter(
    (entry) =>
      entry.state === 'waiting' && entry.personId === person.id && entry.practiceId === practice.id,
  );
  for (const { id } of own) {
    const outcome = await sendFromOutbox(id, true);
    for (const listener of listeners) listener();
    if (outcome.kind === 'kept') return;
  }
}

export function sendNow(): void {
  if (running) return;
  running = true;
  sendWaiting()
    .catch((error: unknown) => {
      // Without a network or a session it is tried again later; anything else is a bug of ours.
      if (error instanceof Unreachable || error instanceof ProblemError) return;
      throw error;
    })
    .finally(() => {
      running = false;
    });
}

/** From now on this window sends what waits, whatever screen it shows. */
export function startRunner(): void {
  if (started) return;
  started = true;
  window.addEventListener('online', sendNow);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') sendNow();
  });
  window.setInterval(sendNow, PAUSE);
  sendNow();
}
