import { FILES, type WordsFile } from './files.js';
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

/** What every screen needs; the words of a screen come with the screen. */
const wanted = new Set<WordsFile>(['core']);
let spoken: Language = 'en';
let live: Partial<Text> = {};

async function load(language: Language, files: readonly WordsFile[]): Promise<Partial<Text>> {
  return Object.assign({}, ...(await Promise.all(files.map((file) => FILES[file][language]()))));
}

/** All words that were wanted so far, in a language. */
export async function loadText(language: Language): Promise<Text> {
  let files: WordsFile[] = [];
  let words: Partial<Text> = {};
  // A screen may want more while these are on their way.
  while (files.length < wanted.size) {
    files = [...wanted];
    words = await load(language, files);
  }
  spoken = language;
  live = words;
  // A screen is drawn only after the words it brings, so that it never misses one.
  return live as Text;
}

/** Adds the words of a screen to those that are spoken; the screen's module waits for it. */
export async function bring(...files: readonly WordsFile[]): Promise<void> {
  for (const file of files) wanted.add(file);
  for (let language: Language | undefined; language !== spoken; ) {
    language = spoken;
    Object.assign(live, await load(language, files));
  }
}

/** The browser's own variety of the language (de-CH, en-GB), for dates and numbers. */
export function localeFor(language: Language): string {
  const own = navigator.languages.find((tag) => tag.slice(0, 2) === language && tag.length > 2);
  return own ?? { en: 'en-GB', de: 'de-DE' }[language];
}
