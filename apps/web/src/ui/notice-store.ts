export interface Notice {
  readonly id: number;
  readonly tone: 'done' | 'problem';
  readonly text: string;
  /** The way back, or on. */
  readonly action?: { readonly label: string; readonly run: () => void };
}

let notices: readonly Notice[] = [];
let nextId = 1;
const listeners = new Set<() => void>();

function set(next: readonly Notice[]): void {
  notices = next;
  for (const listener of listeners) listener();
}

/** For what happened that no field and no screen shows: "Booked", with a way to undo it. */
export function notify(notice: Omit<Notice, 'id'>): void {
  set([...notices.slice(-2), { ...notice, id: nextId++ }]);
}

export function dismiss(id: number): void {
  set(notices.filter((notice) => notice.id !== id));
}

export function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const currentNotices = (): readonly Notice[] => notices;
