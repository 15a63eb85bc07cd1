import { signedInHint } from '../../../app/session.js';

/** Loads what sends waiting visits, if any wait: on every screen, without weighing on the others. */
export function resumeOutbox(): void {
  if (localStorage.getItem('traybook.outbox') === null || !signedInHint.isSet()) return;
  void import('./runner.js').then(({ startRunner }) => startRunner());
}
