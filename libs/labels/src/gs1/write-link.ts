import { failed, type Result } from '../problem.js';
import { escapeLink } from './percent.js';
import type { Element } from './values.js';

const CANONICAL_STEM = 'https://id.gs1.org';

/**
 * Writes a Digital Link: the first key, as many of its qualifiers as are there, the rest as attributes
 * (those of predefined length first).
 */
export function writeDigitalLink(
  elements: readonly Element[],
  stem = CANONICAL_STEM,
): Result<{ readonly uri: string }> {
  const key = elements.find(({ identifier }) => identifier.qualifiers !== undefined);
  if (!key) {
    return failed('no_primary_key', 0, 'None of the identifiers can be the key of a link.');
  }
  const path = [key, ...qualifiersOf(key, elements)];
  const inPath = new Set(path.map(({ identifier }) => identifier.ai));
  const rest = new Map<string, Element>();
  for (const element of elements) {
    const { ai, attribute } = element.identifier;
    if (inPath.has(ai) || rest.has(ai)) continue;
    if (!attribute) {
      const sentence = `(${ai}) may not stand behind the "?" of a link.`;
      return failed('not_a_data_attribute', element.at, sentence, { identifier: ai });
    }
    rest.set(ai, element);
  }
  const attributes = [...rest.values()];
  const ordered = [
    ...attributes.filter(({ identifier }) => identifier.predefined),
    ...attributes.filter(({ identifier }) => !identifier.predefined),
  ];
  const before = path.map((one) => `/${one.identifier.ai}/${escapeLink(one.value, 'path')}`);
  const behind = ordered.map((one) => `${one.identifier.ai}=${escapeLink(one.value, 'query')}`);
  const query = behind.length > 0 ? `?${behind.join('&')}` : '';
  return { ok: true, uri: `${stem.replace(/\/$/, '')}${before.join('')}${query}` };
}

function qualifiersOf(key: Element, elements: readonly Element[]): readonly Element[] {
  let best: readonly Element[] = [];
  for (const order of key.identifier.qualifiers ?? []) {
    const there = order.flatMap((ai) => elements.find((one) => one.identifier.ai === ai) ?? []);
    if (there.length > best.length) best = there;
  }
  return best;
}
