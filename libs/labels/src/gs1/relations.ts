import { type Failed, failed } from '../problem.js';
import type { Element } from './values.js';

export const RELATION_RULES = ['exclusive', 'repeats', 'required'] as const;
export type RelationRule = (typeof RELATION_RULES)[number];

/** Whether identifiers may stand side by side. They are looked at over all symbols of one item. */
export function relationProblem(
  elements: readonly Element[],
  rules: readonly RelationRule[],
): Failed | undefined {
  if (rules.includes('exclusive')) {
    const wrong = exclusiveProblem(elements);
    if (wrong) return wrong;
  }
  if (rules.includes('required')) {
    const wrong = requiredProblem(elements) ?? signatureProblem(elements);
    if (wrong) return wrong;
  }
  return rules.includes('repeats') ? repeatProblem(elements) : undefined;
}

/** Whether an identifier is meant: `31nn` means every one of four digits that begins with 31. */
function meant(pattern: string, ai: string): boolean {
  if (!pattern.endsWith('n')) return pattern === ai;
  return ai.length === pattern.length && ai.startsWith(pattern.replaceAll('n', ''));
}

function exclusiveProblem(elements: readonly Element[]): Failed | undefined {
  for (const { identifier, at } of elements) {
    for (const pattern of identifier.excludes) {
      const other = elements.find(
        (one) => one.identifier !== identifier && meant(pattern, one.identifier.ai),
      );
      if (other) {
        const sentence = `(${identifier.ai}) and (${other.identifier.ai}) exclude each other.`;
        return failed('excluded_ai_pair', at, sentence, { identifier: identifier.ai });
      }
    }
  }
  return undefined;
}

function requiredProblem(elements: readonly Element[]): Failed | undefined {
  for (const { identifier, at } of elements) {
    const missing = unmetNeed(identifier.needs, elements);
    if (missing) {
      const wanted = missing.map((all) => all.map((ai) => `(${ai})`).join(' with ')).join(', ');
      const sentence = `(${identifier.ai}) needs one of these beside it: ${wanted}.`;
      return failed('missing_required_ai', at, sentence, { identifier: identifier.ai });
    }
  }
  return undefined;
}

type Need = readonly (readonly string[])[];

function unmetNeed(needs: readonly Need[], elements: readonly Element[]): Need | undefined {
  const present = (pattern: string) => elements.some((one) => meant(pattern, one.identifier.ai));
  return needs.find((need) => !need.some((all) => all.every(present)));
}

const SIGNED_WITH_SERIAL = ['253', '255', '8003'];

/** A digital signature (8030) signs one thing: the key beside it must have its serial part. */
function signatureProblem(elements: readonly Element[]): Failed | undefined {
  if (!elements.some(({ identifier }) => identifier.ai === '8030')) return undefined;
  const bare = elements.find(
    ({ identifier, value }) =>
      SIGNED_WITH_SERIAL.includes(identifier.ai) && value.length === identifier.min,
  );
  if (!bare) return undefined;
  const { ai } = bare.identifier;
  const sentence = `Beside a signature (8030), (${ai}) must have its serial part.`;
  return failed('missing_required_ai', bare.at, sentence, { identifier: ai });
}

function repeatProblem(elements: readonly Element[]): Failed | undefined {
  const seen = new Map<string, string>();
  for (const { identifier, value, at } of elements) {
    const before = seen.get(identifier.ai);
    if (before !== undefined && before !== value) {
      const { ai } = identifier;
      const sentence = `(${ai}) is there twice with different values: ${before} and ${value}.`;
      return failed('repeated_ai_different_value', at, sentence, { identifier: ai });
    }
    seen.set(identifier.ai, value);
  }
  return undefined;
}
