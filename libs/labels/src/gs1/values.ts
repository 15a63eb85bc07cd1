import { type Failed, failed, type LabelProblemCode } from '../problem.js';
import { type CharacterSet, firstForeign, shown } from './character-sets.js';
import { check } from './checks.js';
import type { Check } from './date-checks.js';
import type { Identifier, Part } from './identifiers.js';

/** An identifier with its value, and where in the text the value begins. */
export interface Element {
  readonly identifier: Identifier;
  readonly value: string;
  readonly at: number;
}

const FOREIGN: Record<CharacterSet, { code: LabelProblemCode; name: string }> = {
  N: { code: 'non_digit_character', name: 'digits' },
  X: { code: 'invalid_cset82_character', name: 'the characters GS1 allows' },
  Y: { code: 'invalid_cset39_character', name: 'digits, capitals, "#", "-" and "/"' },
  Z: { code: 'invalid_cset64_character', name: 'letters, digits, "-", "_" and "="' },
};

const checksOf = new Map<Part, readonly Check[]>();

function checksFor(part: Part): readonly Check[] {
  let found = checksOf.get(part);
  if (!found) {
    found = part.checks.map(check);
    checksOf.set(part, found);
  }
  return found;
}

/** What is wrong with the length as a whole, before anybody looks into the value. */
export function lengthProblem({ identifier, value, at }: Element): Failed | undefined {
  const { ai, min, max } = identifier;
  const about = { identifier: ai };
  if (value.length < min) {
    const wanted = min === max ? `${min}` : `at least ${min}`;
    return failed('too_short', at, `(${ai}) has ${value.length} characters, not ${wanted}.`, about);
  }
  if (value.length > max) {
    const sentence = `(${ai}) has ${value.length} characters; ${max} are the most.`;
    return failed('too_long', at + max, sentence, about);
  }
  return undefined;
}

interface Span {
  readonly text: string;
  readonly from: number;
  /** The end of the text, or the separator that ends the value at the latest. */
  readonly to: number;
}

/**
 * Checks the value of an identifier part by part, as far as the identifier goes. Says where it ended,
 * which is before `to` if more follows.
 */
export function valueEnd(
  identifier: Identifier,
  { text, from, to }: Span,
  currentYear: number,
): number | Failed {
  const { ai, parts, min, max } = identifier;
  if (from === to) {
    return failed('empty_value', from, `Nothing stands behind (${ai}).`, { identifier: ai });
  }
  let at = from;
  for (const part of parts) {
    const end = Math.min(to, at + part.max);
    if (part.optional && end === at) continue;
    if (end - at < part.min) {
      const wanted = min === max ? `${min}` : `${min} to ${max}`;
      const sentence = `(${ai}) ends after ${end - from} characters; it needs ${wanted}.`;
      return failed('incorrect_length', end, sentence, { identifier: ai });
    }
    const wrong = partProblem(identifier, part, text.slice(at, end), currentYear);
    if (wrong)
      return { ok: false, problem: { ...wrong.problem, position: wrong.problem.position + at } };
    at = end;
  }
  return at;
}

function partProblem(
  { ai }: Identifier,
  part: Part,
  value: string,
  currentYear: number,
): Failed | undefined {
  const foreign = firstForeign(value, part.set);
  if (foreign >= 0) {
    const { code, name } = FOREIGN[part.set];
    const sentence = `(${ai}) holds ${shown(value.charAt(foreign))}; only ${name} may stand there.`;
    return failed(code, foreign, sentence, { identifier: ai });
  }
  for (const checkOne of checksFor(part)) {
    const finding = checkOne(value, currentYear);
    if (finding) {
      const { code, at, sentence, expected = null } = finding;
      return failed(code, at, `(${ai}) ${value}: ${sentence}`, { identifier: ai, expected });
    }
  }
  return undefined;
}

/** Checks a value that stands alone, as in brackets or in a link. */
export function valueProblem(element: Element, currentYear: number): Failed | undefined {
  const { identifier, value, at } = element;
  const end = valueEnd(identifier, { text: value, from: 0, to: value.length }, currentYear);
  if (typeof end !== 'number') {
    return { ok: false, problem: { ...end.problem, position: end.problem.position + at } };
  }
  if (end === value.length) return undefined;
  const sentence = `(${identifier.ai}) has ${value.length} characters; ${end} are the most.`;
  return failed('too_long', at + end, sentence, { identifier: identifier.ai });
}
