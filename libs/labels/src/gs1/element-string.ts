import { failed, type Result } from '../problem.js';
import { firstForeign, shown } from './character-sets.js';
import { identifierAt } from './identifiers.js';
import { type Element, valueEnd } from './values.js';

/** FNC1 as scanners send it: ASCII 29. */
export const SEPARATOR = '\u001d';

export type Elements = Result<{ readonly elements: readonly Element[] }>;

/**
 * Reads GS1 element strings as they come out of a symbol, without symbology identifier and without a
 * first FNC1. A lost separator is never guessed: a value that goes on too long is an error.
 */
export function readElementString(text: string, currentYear: number): Elements {
  if (text === '') return failed('empty_value', 0, 'There are no data behind the symbol.');
  const elements: Element[] = [];
  let at = 0;
  while (at < text.length) {
    const identifier = identifierAt(text, at);
    if (!identifier) return unknownIdentifier(text, at);
    const from = at + identifier.ai.length;
    const separator = text.indexOf(SEPARATOR, from);
    const to = separator < 0 ? text.length : separator;
    const end = valueEnd(identifier, { text, from, to }, currentYear);
    if (typeof end !== 'number') return end;
    if (end < to && !identifier.predefined) {
      const { ai, max } = identifier;
      const sentence =
        `(${ai}) goes on after its ${max === 1 ? 'only character' : `${max} characters`}; ` +
        'it is too long, or a separator is missing.';
      return failed('too_long', end, sentence, { identifier: ai });
    }
    elements.push({ identifier, value: text.slice(from, end), at: from });
    at = end === to && separator >= 0 ? end + 1 : end;
  }
  return { ok: true, elements };
}

function unknownIdentifier(text: string, at: number): Elements {
  const start = text.slice(at, at + 4);
  const [first = ''] = start;
  const sentence =
    firstForeign(first, 'N') >= 0
      ? `An application identifier should begin here, not ${shown(first)}.`
      : `No application identifier begins with "${/^\d+/.exec(start)?.[0] ?? start}".`;
  return failed('unknown_ai', at, sentence, { identifier: start });
}
