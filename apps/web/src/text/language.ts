import { en } from './en.js';
import type { Text } from './text.js';

export type Language = 'en' | 'de';

export const LANGUAGES: readonly { readonly id: Language; readonly name: string }[] = [
  { id: 'en', name: 'English' },
  { id: 'de', name: 'Deutsch' },
];

const STORED = 'traybook.language';

function isLanguage(text: string | null | undefined): text is Language {
  return LANGUAGES.some(({ id }) => id === text);
}

/** The language chosen on this device, or else the first of the browser's that we speak. */
export function startingLanguage(): Language {
  const chosen = localStorage.getItem(STORED);
  if (isLanguage(chosen)) return chosen;
  return navigator.languages.map((tag) => tag.slice(0, 2)).find(isLanguage) ?? 'en';
}

export function rememberLanguage(language: Language): void {
  localStorage.setItem(STORED, language);
}

/** English is part of the first load; every other language comes when it is wanted. */
export async function loadText(language: Language): Promise<Text> {
  if (language === 'de') return (await import('./de.js')).de;
  return en;
}

/** The browser's own variety of the language (de-CH, en-GB), for dates and numbers. */
export function localeFor(language: Language): string {
  const own = navigator.languages.find((tag) => tag.slice(0, 2) === language && tag.length > 2);
  return own ?? { en: 'en-GB', de: 'de-DE' }[language];
}
