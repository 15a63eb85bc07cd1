/**
 * A key for one booking, made before it is sent, so that sending it again books nothing twice.
 * randomUUID exists only on https and localhost; a practice may serve its own network without.
 */
export function newKey(): string {
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

/** Gives the same key for the same body until `forget`: a second try is not a second booking. */
export class KeyKeeper {
  private last: { readonly body: string; readonly key: string } | undefined;

  keyFor(body: unknown): string {
    const text = JSON.stringify(body);
    if (this.last?.body !== text) this.last = { body: text, key: newKey() };
    return this.last.key;
  }

  forget(): void {
    this.last = undefined;
  }
}
