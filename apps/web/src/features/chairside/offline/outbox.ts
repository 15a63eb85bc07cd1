import type { Problem } from '../../../api/problem.js';
import type { VisitBody } from '../api/post-visit.js';
import type { VisitDraft } from '../draft/draft.js';

/** A visit on its way into the book. It leaves this list only when the book has answered. */
export interface Waiting {
  /** Of the visit; made on this device. */
  readonly id: string;
  readonly idempotencyKey: string;
  readonly practiceId: string;
  readonly personId: string;
  readonly personName: string;
  readonly body: VisitBody;
  /** To correct it, should the service refuse it. */
  readonly draft: VisitDraft;
  readonly state: 'waiting' | 'refused' | 'booked';
  readonly problem?: Pick<Problem, 'detail' | 'code' | 'errors'>;
  readonly materialCost?: string;
}

const OUTBOX = 'traybook.outbox';
const EVENT = 'traybook:outbox';
const NONE: readonly Waiting[] = [];

let seen: { readonly text: string | null; readonly list: readonly Waiting[] } = {
  text: null,
  list: NONE,
};

function isWaiting(value: unknown): value is Waiting {
  return (
    typeof value === 'object' && value !== null && 'idempotencyKey' in value && 'body' in value
  );
}

function parsed(text: string | null): readonly Waiting[] {
  try {
    const value: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(value) ? value.filter(isWaiting) : NONE;
  } catch {
    // Not written by us: there is nothing in it that we could send.
    return NONE;
  }
}

/** The same list as long as nothing changes, in whatever tab. */
export function readOutbox(): readonly Waiting[] {
  const text = localStorage.getItem(OUTBOX);
  if (text !== seen.text) seen = { text, list: parsed(text) };
  return seen.list;
}

function write(list: readonly Waiting[]): void {
  if (list.length === 0) localStorage.removeItem(OUTBOX);
  else localStorage.setItem(OUTBOX, JSON.stringify(list));
  window.dispatchEvent(new Event(EVENT));
}

/** Kept before it is sent, so that neither a reload nor a lost network loses it. */
export function keep(entry: Waiting): void {
  write([...readOutbox().filter(({ id }) => id !== entry.id), entry]);
}

export function change(id: string, part: Partial<Waiting>): void {
  write(readOutbox().map((entry) => (entry.id === id ? { ...entry, ...part } : entry)));
}

export function remove(id: string): void {
  write(readOutbox().filter((entry) => entry.id !== id));
}

export function subscribe(listener: () => void): () => void {
  const fromElsewhere = (event: StorageEvent) => {
    if (event.key === OUTBOX || event.key === null) listener();
  };
  window.addEventListener(EVENT, listener);
  window.addEventListener('storage', fromElsewhere);
  return () => {
    window.removeEventListener(EVENT, listener);
    window.removeEventListener('storage', fromElsewhere);
  };
}
