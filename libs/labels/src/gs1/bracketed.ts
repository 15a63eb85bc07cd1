import { type Failed, failed, type Result } from '../problem.js';
import type { Elements } from './element-string.js';
import { findIdentifier } from './identifiers.js';
import { spelledSeparator } from './separators.js';
import { type Element, lengthProblem, valueProblem } from './values.js';

interface BracketOptions {
  /** Print puts blanks around the brackets; no value may hold one, so they can be dropped. */
  readonly blanks?: boolean;
}

/**
 * Reads the human-readable form: each identifier in brackets, its value behind it. A bracket that
 * belongs to a value is written `\(`.
 */
export function readBracketed(
  text: string,
  currentYear: number,
  options: BracketOptions = {},
): Elements {
  if (text === '') return failed('empty_value', 0, 'There is nothing to read.');
  const spelled = options.blanks ? spelledSeparator(text) : -1;
  if (spelled >= 0) {
    const sentence = 'In brackets no separator is written; take it out.';
    return failed('ambiguous_separator', spelled, sentence);
  }
  const elements: Element[] = [];
  let at = 0;
  while (at < text.length) {
    const next = oneElement(text, at, options.blanks === true);
    if (!next.ok) return next;
    const wrong = lengthProblem(next.element);
    if (wrong) return wrong;
    elements.push(next.element);
    at = next.end;
  }
  for (const element of elements) {
    const wrong = valueProblem(element, currentYear);
    if (wrong) return asWritten(wrong, element, text);
  }
  return { ok: true, elements };
}

/** The place of a problem inside a value, counted in what is written: `\(` is two characters. */
function asWritten({ problem }: Failed, { at }: Element, text: string): Failed {
  let position = at;
  for (let left = problem.position - at; left > 0; left -= 1) {
    position += text.startsWith('\\(', position) ? 2 : 1;
  }
  return { ok: false, problem: { ...problem, position } };
}

type Next = Result<{ readonly element: Element; readonly end: number }>;

function oneElement(text: string, at: number, blanks: boolean): Next {
  if (text.charAt(at) !== '(') {
    return failed('malformed', at, 'Here an identifier in round brackets should begin.');
  }
  const close = text.indexOf(')', at);
  if (close < 0) return failed('malformed', at, 'This bracket is never closed.');
  const ai = text.slice(at + 1, close);
  const identifier = findIdentifier(ai);
  if (!identifier) {
    const sentence = `There is no application identifier (${ai}).`;
    return failed('unknown_ai', at + 1, sentence, { identifier: ai });
  }
  let from = close + 1;
  const end = valueEnds(text, from);
  let to = end;
  if (blanks) {
    while (from < to && text.charAt(from) === ' ') from += 1;
    while (to > from && text.charAt(to - 1) === ' ') to -= 1;
  }
  if (from === to && end === text.length) {
    return failed('malformed', from, `Nothing stands behind (${ai}).`, { identifier: ai });
  }
  const value = text.slice(from, to).replaceAll('\\(', '(');
  return { ok: true, element: { identifier, value, at: from }, end };
}

function valueEnds(text: string, from: number): number {
  let at = text.indexOf('(', from);
  while (at > from && text.charAt(at - 1) === '\\') at = text.indexOf('(', at + 1);
  return at < 0 ? text.length : at;
}
