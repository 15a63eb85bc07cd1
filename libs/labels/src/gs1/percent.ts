/** Where in a link a text stands: a plus is a plus in the path and a space in the query. */
export type LinkPlace = 'path' | 'query';

const ESCAPED = /%([0-9A-Fa-f]{2})/g;
const TO_ESCAPE = /[^A-Za-z0-9\-._~]/g;

/** Undoes percent-encoding; what is no complete sequence stays as it is. Each byte is a character. */
export function unescapeLink(text: string, place: LinkPlace): string {
  const spaced = place === 'query' ? text.replaceAll('+', ' ') : text;
  return spaced.replace(ESCAPED, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
}

export function escapeLink(text: string, place: LinkPlace): string {
  return text.replace(TO_ESCAPE, (character) => {
    if (character === ' ' && place === 'query') return '+';
    const code = character.charCodeAt(0);
    return `%${code.toString(16).toUpperCase().padStart(2, '0')}`;
  });
}
