import { isNotSignedIn, ProblemError, Unreachable } from '../../../api/problem.js';
import { postVisit, type Visit } from '../api/post-visit.js';
import { change, readOutbox, remove, type Waiting } from './outbox.js';

export type Outcome =
  | { readonly kind: 'booked'; readonly visit: Visit }
  /** The book has a visit with this id: an earlier sending had arrived after all. */
  | { readonly kind: 'booked before' }
  | { readonly kind: 'refused'; readonly error: ProblemError }
  /** No network, no session, or a busy service: it stays and is tried again. */
  | { readonly kind: 'kept'; readonly error: unknown }
  /** Another tab was faster. */
  | { readonly kind: 'gone' };

/** One tab at a time, where the browser can tell tabs apart; the key guards the rest. */
function alone<T>(work: () => Promise<T>): Promise<T> {
  if (!('locks' in navigator)) return work();
  return navigator.locks.request('traybook.outbox', work) as Promise<T>;
}

function mayArriveLater(error: unknown): boolean {
  if (error instanceof Unreachable || isNotSignedIn(error)) return true;
  if (error instanceof DOMException) return error.name === 'TimeoutError';
  // 408, 429, 5xx: nothing was wrong with the visit.
  return error instanceof ProblemError && !isOfTheVisit(error.problem.status);
}

const isOfTheVisit = (status: number): boolean =>
  status >= 400 && status < 500 && status !== 408 && status !== 429;

const isBookedBefore = ({ problem }: ProblemError): boolean =>
  problem.code === 'already_exists' && problem.errors?.some(({ field }) => field === 'id') === true;

async function tryOnce(entry: Waiting): Promise<Outcome> {
  try {
    const visit = await postVisit(entry.body, entry.idempotencyKey);
    return { kind: 'booked', visit };
  } catch (error) {
    if (mayArriveLater(error)) return { kind: 'kept', error };
    if (!(error instanceof ProblemError)) throw error;
    return isBookedBefore(error) ? { kind: 'booked before' } : { kind: 'refused', error };
  }
}

/** Sends one visit of the outbox. What the book has answered is what the outbox says afterwards. */
export function sendFromOutbox(id: string, later: boolean): Promise<Outcome> {
  return alone(async () => {
    const entry = readOutbox().find((each) => each.id === id);
    if (entry?.state !== 'waiting') return { kind: 'gone' };
    // Nothing is tried that the browser knows to be in vain.
    if (!navigator.onLine) return { kind: 'kept', error: new Unreachable() };
    const outcome = await tryOnce(entry);
    settle(id, outcome, later);
    return outcome;
  });
}

function settle(id: string, outcome: Outcome, later: boolean): void {
  if (outcome.kind === 'booked' || outcome.kind === 'booked before') {
    const cost = outcome.kind === 'booked' ? { materialCost: outcome.visit.materialCost } : {};
    // Whoever waits for it sees the result itself; what was booked later stays to be seen.
    if (later) change(id, { state: 'booked', ...cost });
    else remove(id);
  }
  if (outcome.kind === 'refused') {
    const { detail, code, errors } = outcome.error.problem;
    const problem = { detail, code, ...(errors === undefined ? {} : { errors }) };
    if (later) change(id, { state: 'refused', problem });
    else remove(id);
  }
}
