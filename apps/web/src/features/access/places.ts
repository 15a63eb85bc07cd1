import type { Choice } from '../../ui/fields.js';

export function ownTimeZone(): string {
  return new Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** Every zone the browser knows; its own even if it goes by an older name. */
export function timeZones(): Choice[] {
  const names = new Set([...Intl.supportedValuesOf('timeZone'), ownTimeZone()]);
  return [...names].sort().map((name) => ({ value: name, label: name.replaceAll('_', ' ') }));
}

/** Every currency the browser knows: 'EUR · Euro'. */
export function currencies(language: string): Choice[] {
  const names = new Intl.DisplayNames([language || 'en'], { type: 'currency' });
  return Intl.supportedValuesOf('currency').map((code) => ({
    value: code,
    label: `${code} · ${names.of(code) ?? code}`,
  }));
}
